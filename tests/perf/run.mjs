// How fast the built page is: `node run.mjs [bytes] [analysis] [paint] [drag] [memory] [lighthouse]`, all of them without a word. It prints a table; what swings with
// the machine is printed only, what does not (memory, Lighthouse's accessibility and best practices) fails when missed.
import { launch } from "../browser/browser.mjs";
import { serve } from "../browser/server.mjs";
import { weighed } from "./bytes.mjs";
import { drags, memory } from "./drag.mjs";
import { judged } from "./lighthouse.mjs";
import { paints } from "./paint.mjs";

const wanted = process.argv.slice(2);
const asked = (word) => wanted.length === 0 || wanted.includes(word);

const server = await serve();
const browser = await launch();
let held = true;
try {
  if (asked("bytes")) weighed();
  if (asked("analysis")) await import("./analysis.mjs");
  if (asked("paint")) await paints(browser, server.address);
  if (asked("drag")) await drags(browser, server.address);
  if (asked("memory")) held = (await memory(browser, server.address)) && held;
  if (asked("lighthouse")) held = (await judged(server.address)) && held;
} finally {
  await browser.close();
  server.stop();
}
if (!held) {
  console.error("\nA figure that does not depend on the machine misses its aim; see the table.");
  process.exitCode = 1;
}
