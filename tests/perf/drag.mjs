// Dragging, editing and switching as a person does it: how long the main thread is busy from the event to the commit of its frame.
import { DESKTOP } from "../browser/browser.mjs";
import { RisewrightPage } from "../browser/page.mjs";
import { heading, spread, tell, tellSpread } from "./table.mjs";
import { frames, traced } from "./trace.mjs";

const MOVES = 200;
const FRAME = 16;
/** At 60 frames a second, ms: what takes longer misses the next one. */
const FRAME_AT_60 = 16.7;

/**
 * Moves a pressed mouse to and fro, a step a frame; `each` is done with every step. The browser is told directly: the driver's own mouse runs a
 * script in the page at every move, which would count as the page's work.
 */
async function sweep(page, from, across, up, each = async () => {}) {
  const session = await page.context().newCDPSession(page);
  const mouse = (type, x, y, buttons) =>
    session.send("Input.dispatchMouseEvent", { type, x, y, button: type === "mouseMoved" && !buttons ? "none" : "left", buttons, clickCount: 1 });
  await mouse("mouseMoved", from.x, from.y, 0);
  await mouse("mousePressed", from.x, from.y, 1);
  for (let move = 0; move < MOVES; move += 1) {
    const share = Math.sin((move / MOVES) * 4 * Math.PI);
    await mouse("mouseMoved", from.x + across * share, from.y + up * share, 1);
    await each();
    await page.waitForTimeout(FRAME);
  }
  await mouse("mouseReleased", from.x, from.y, 0);
  await session.detach();
}

async function measured(page, what, work, aim) {
  const { busy, long } = frames(await traced(page, work));
  tellSpread(`${what}, busy ms a frame`, busy, "ms", aim);
  tell(`${what}: tasks over 50 ms`, long.length, "");
  tell(`${what}: frames dropped, busy over ${FRAME_AT_60} ms`, busy.filter((time) => time > FRAME_AT_60).length, `of ${busy.length}`);
  return spread(busy).median;
}

async function all(page, risewright, aim) {
  await risewright.open();
  const [ring, deck] = [await risewright.grip("carriage"), await risewright.grip("deck")];
  const drag = await measured(page, "drag of the carriage", () => sweep(page, ring, 40, 0), aim);
  // A toggle of the picture makes the page lay out and draw everything anew, plots and lettering too.
  const redraw = () => page.evaluate(() => document.querySelector(".choices input").click());
  const plain = await measured(page, "the same, everything drawn anew at each move", () => sweep(page, ring, 40, 0, redraw));
  tell("everything drawn anew against what moves", plain / drag, "x");
  await measured(page, "drag of the deck", () => sweep(page, deck, 0, 90), aim);
  await measured(page, "edit of a number", async () => {
    for (let edit = 0; edit < 20; edit += 1) {
      await risewright.write("Weight", String(60 + edit));
      await page.waitForTimeout(50);
    }
  });
  await measured(page, "switch of units", async () => {
    for (let edit = 0; edit < 10; edit += 1) {
      await risewright.button(edit % 2 ? /^mm/ : /^in/).first().click();
      await page.waitForTimeout(50);
    }
  });
}

/** At full speed and with the processor four times slower. */
export async function drags(browser, address) {
  const context = await browser.newContext(DESKTOP);
  const page = await context.newPage();
  const risewright = new RisewrightPage(page, address);
  heading("From the event to the commit of its frame, full speed");
  await all(page, risewright, "aim 8");
  heading("The same, processor four times slower");
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  await all(page, risewright, "aim 33");
  await context.close();
}

const MINUTES = Number(process.env.MINUTES ?? 10);

/** What the page holds after minutes of dragging, against the first. */
export async function memory(browser, address) {
  heading(`Memory over ${MINUTES} minutes of dragging`);
  const context = await browser.newContext(DESKTOP);
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  const risewright = new RisewrightPage(page, address);
  await risewright.open();
  const held = async () => {
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    const { nodes } = await session.send("Memory.getDOMCounters");
    return { heap: usedSize / 1e6, nodes };
  };
  const ring = await risewright.grip("carriage");
  await sweep(page, ring, 40, 0);
  const first = await held();
  const end = performance.now() + MINUTES * 60_000;
  while (performance.now() < end) await sweep(page, ring, 40, 0);
  const last = await held();
  tell("heap after the first sweep", first.heap, "MB");
  tell("heap after the last", last.heap, "MB", "no growth");
  tell("nodes after the first sweep", first.nodes, "");
  tell("nodes after the last", last.nodes, "", "no growth");
  await context.close();
  // Rounded heaps differ by what the collector leaves; a leak of a kilobyte a frame would be tens of megabytes.
  return last.heap < first.heap + 2 && last.nodes < first.nodes + 100;
}
