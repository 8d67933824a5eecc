// What the main thread of the page does, from Chromium's own trace.
const CATEGORIES = ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"];

/** Records while `work` runs. Resolves to the events of the page's main thread, in order. */
export async function traced(page, work) {
  const session = await page.context().newCDPSession(page);
  const events = [];
  session.on("Tracing.dataCollected", ({ value }) => events.push(...value));
  const complete = new Promise((done) => session.once("Tracing.tracingComplete", done));
  await session.send("Tracing.start", { transferMode: "ReportEvents", traceConfig: { includedCategories: CATEGORIES } });
  await work();
  await session.send("Tracing.end");
  await complete;
  await session.detach();
  const thread = mainThread(events);
  return events.filter((event) => event.pid === thread.pid && event.tid === thread.tid).sort((one, other) => one.ts - other.ts);
}

/** The renderer's main thread that hears the pointer. */
function mainThread(events) {
  const counts = new Map();
  for (const { name, pid, tid } of events) {
    if (name !== "EventDispatch") continue;
    const key = `${pid} ${tid}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  if (!most) throw new Error("Nothing was dispatched while the trace ran.");
  const [pid, tid] = most[0].split(" ").map(Number);
  return { pid, tid };
}

/** A task of the main thread; Chromium also writes each down under its scheduler's name, which does not count again. */
const TASK = "RunTask";
const MOVES = new Set(["pointermove", "mousemove", "input", "change", "click", "keydown"]);

/**
 * For every frame with an event in it: how long the main thread was busy from the event's dispatch to the commit of that frame, ms; and the
 * tasks longer than 50 ms.
 */
export function frames(events) {
  const tasks = events.filter((event) => event.name === TASK && event.ph === "X").map((event) => [event.ts, event.ts + event.dur]);
  const commits = events.filter((event) => event.name === "Commit" && event.dur !== undefined).map((event) => event.ts + event.dur);
  const dispatches = events
    .filter((event) => event.name === "EventDispatch" && MOVES.has(event.args?.data?.type))
    .map((event) => event.ts);
  const busy = [];
  let next = 0;
  for (const commit of commits) {
    const first = dispatches.slice(next).find((at) => at < commit);
    if (first === undefined) continue;
    while (next < dispatches.length && dispatches[next] < commit) next += 1;
    const within = tasks.reduce((sum, [from, to]) => sum + Math.max(0, Math.min(to, commit) - Math.max(from, first)), 0);
    busy.push(within / 1000);
  }
  const long = tasks.map(([from, to]) => (to - from) / 1000).filter((length) => length > 50);
  return { busy, long };
}
