// The page's own WASM module computes the same digits as this machine: `node digests.mjs`. Six designs, their digests in ../digests.md.
import assert from "node:assert/strict";
import { readFileSync, readdirSync, existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { DIST } from "./server.mjs";

const record = readFileSync(join(import.meta.dirname, "..", "digests.md"), "utf8");
const odd = JSON.parse(readFileSync(join(import.meta.dirname, "..", "reference", "odd_designs.json"), "utf8")).designs;

/** The last recorded digest of each design. */
const recorded = new Map([...record.matchAll(/^\| (.+?) \| ([0-9a-f]{16}) \|/gm)].map(([, name, digest]) => [name, digest]));
assert.equal(recorded.size, 6, "six designs are recorded");

const folder = readdirSync(DIST).find((name) => existsSync(join(DIST, name, "work_bg.wasm")));
assert.ok(folder, "The page is not built: run `cargo run --release -- --build-only` first.");
const { initSync, Work } = await import(pathToFileURL(join(DIST, folder, "work.js")));
initSync({ module: readFileSync(join(DIST, folder, "work_bg.wasm")) });

for (const [name, digest] of recorded) {
  const link = odd.find((one) => one.name === name)?.link ?? name;
  assert.equal(Work.digest(link), digest, `${name}: the page computes other digits than this machine`);
  console.log(`${digest}  ${name}`);
}
