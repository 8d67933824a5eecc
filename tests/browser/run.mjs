// Runs the user stories in stories/ in a real Chromium against the built page: `node run.mjs [words of a file's name ...]`.
import { readdir } from "node:fs/promises";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { launch, DESKTOP } from "./browser.mjs";
import { RisewrightPage } from "./page.mjs";
import { serve } from "./server.mjs";
import { leavings, watch } from "./watch.mjs";

const PATIENCE = 90_000; // ms for a story that does not ask for more
const LANES = Math.min(2, availableParallelism());

const words = process.argv.slice(2);
const folder = join(import.meta.dirname, "stories");
const files = (await readdir(folder)).filter((file) => file.endsWith(".mjs")).sort();
const chosen = words.length ? files.filter((file) => words.some((word) => file.includes(word))) : files;
if (!chosen.length) {
  console.error(`No story is named like ${words.join(", ")}; there are ${files.join(", ")}.`);
  process.exit(1);
}

/**
 * Runs one story in a profile of its own. A story exports `name` and `run(context)`; it may export `device` (options of
 * the browser context, by default a desktop), `expected` (patterns of problems that it provokes itself), `patience` (ms it may take) and
 * `alone` (whether it measures time, so that no other story may run beside it).
 */
async function tell(story, browser, server) {
  const problems = [];
  const broken = [];
  const contexts = [];
  // A second profile that a story opens is watched like the first.
  const another = async (device = DESKTOP) => {
    const context = await watched(browser, server.address, problems, device);
    contexts.push(context);
    return context;
  };
  try {
    const context = await another({ ...DESKTOP, ...story.device });
    const page = await context.newPage();
    const risewright = new RisewrightPage(page, server.address);
    const given = { page, risewright, context, another, address: server.address, problems };
    const patience = patienceOf(story);
    let timer;
    const late = new Promise((_, reject) => {
      timer = setTimeout(() => reject(new Error(`not done after ${patience / 1000} s`)), patience);
    });
    await Promise.race([story.run(given), late]).finally(() => clearTimeout(timer));
  } catch (trouble) {
    broken.push(trouble.stack ?? String(trouble));
  }
  for (const context of contexts) await context.close().catch((trouble) => broken.push(`not closed: ${trouble}`));
  const unexpected = problems.filter((problem) => !story.expected?.some((pattern) => pattern.test(problem)));
  return [...broken, ...unexpected];
}

async function watched(browser, address, problems, device) {
  const context = await browser.newContext(device);
  context.setDefaultTimeout(20_000);
  await watch(context, address, problems);
  // A story may close it before the end: what it leaves behind is looked at whenever it goes, once.
  const close = context.close.bind(context);
  let closed;
  context.close = () => (closed ??= leavings(context).then((left) => problems.push(...left)).finally(close));
  return context;
}

let passed = 0;
let failed = 0;

/** Tells stories of a list, which other lanes share, until none is left. */
async function lane(stories, server) {
  const browser = await launch();
  for (let next = stories.shift(); next; next = stories.shift()) {
    const { file, story } = next;
    const start = performance.now();
    const problems = await tell(story, browser, server);
    const seconds = ((performance.now() - start) / 1000).toFixed(1);
    if (problems.length) failed += 1;
    else passed += 1;
    console.log(`${problems.length ? "FAILED" : "ok"}  ${story.name} (${file}, ${seconds} s)`);
    for (const problem of problems) console.log(`    ${problem.replaceAll("\n", "\n    ")}`);
  }
  await browser.close();
}

const stories = await Promise.all(chosen.map(async (file) => ({ file, story: await import(join(folder, file)) })));
const apart = stories.filter(({ story }) => story.alone);
// The long ones first, so that no lane waits for another at the end.
const together = stories.filter(({ story }) => !story.alone).toSorted((one, other) => patienceOf(other.story) - patienceOf(one.story));
let server;
try {
  server = await serve();
  // Most of a story's time is waiting: for a frame, for the late write of an address.
  await Promise.all(Array.from({ length: LANES }, () => lane(together, server)));
  await lane(apart, server);
} catch (trouble) {
  // No server, or no browser.
  console.error(trouble.message);
  failed += 1;
} finally {
  server?.stop();
}
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed ? 1 : 0);

function patienceOf(story) {
  return story.patience ?? PATIENCE;
}
