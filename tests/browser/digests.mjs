// The page's own WASM module computes the same digits as this machine: `node digests.mjs`. Six designs, their digests in ../digests.md.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { linkOf, work } from "./module.mjs";

const record = readFileSync(join(import.meta.dirname, "..", "digests.md"), "utf8");

/** The last recorded digest of each design. */
const recorded = new Map([...record.matchAll(/^\| (.+?) \| ([0-9a-f]{16}) \|/gm)].map(([, name, digest]) => [name, digest]));
assert.equal(recorded.size, 6, "six designs are recorded");

const Work = await work();
for (const [name, digest] of recorded) {
  assert.equal(Work.digest(linkOf(name)), digest, `${name}: the page computes other digits than this machine`);
  console.log(`${digest}  ${name}`);
}
