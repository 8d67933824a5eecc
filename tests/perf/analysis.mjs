// The whole analysis of a design, natively and by the page's own WASM module, in one run: `node analysis.mjs`, from all.sh too, since a ratio
// does not depend on the machine.
import { execFileSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { linkOf, work } from "../browser/module.mjs";
import { ROOT } from "../browser/server.mjs";

const DESIGNS = ["short", "a", "b", "four"];
const ROUNDS = 60;
/** WASM costs 1.5 to 2.5 times as much as the same natively (common practice, no source); above this something in the build has gone. */
const MOST = 6;

const Work = await work();
const links = DESIGNS.map(linkOf);

const program = join(process.env.CARGO_TARGET_DIR ?? join(ROOT, "target"), "release", "examples", "pace");
if (!existsSync(program)) {
  console.error("The solver's programs are not built: run `cargo build --release -p risewright --examples` first.");
  process.exit(1);
}
const native = execFileSync(program, links, { encoding: "utf8" }).trim().split("\n").map(Number);

console.log("Whole analysis with strength checks, clashes, findings and the digest of all curves, ms, best of many");
console.log("design     native     WASM    ratio");
const ratios = links.map((link, at) => {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    if (!Work.digest(link)) throw new Error(`${DESIGNS[at]} cannot be analysed.`);
    best = Math.min(best, performance.now() - start);
  }
  const ratio = best / native[at];
  console.log(`${DESIGNS[at].padEnd(8)} ${native[at].toFixed(2).padStart(8)} ${best.toFixed(2).padStart(8)} ${ratio.toFixed(2).padStart(8)}`);
  return ratio;
});
if (ratios.some((ratio) => !(ratio < MOST))) {
  console.error(`WASM takes more than ${MOST} times as long as this machine itself.`);
  process.exitCode = 1;
}
