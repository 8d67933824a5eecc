// The same solver outside the browser: `core/examples/describe` and `solve`, as a person would call them.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ROOT } from "./server.mjs";

function example(name, ...words) {
  const run = ["run", "--quiet", "--release", "-p", "risewright", "--example", name, "--", ...words];
  return execFileSync("cargo", run, { cwd: ROOT, encoding: "utf8" });
}

/** What `solve` prints for the design of a link with the deck at `heights`, metres. */
export function solved(link, heights) {
  const folder = mkdtempSync(join(tmpdir(), "mechanism-"));
  try {
    const file = join(folder, "mechanism.json");
    writeFileSync(file, example("describe", link, ...heights.map(String)));
    return JSON.parse(example("solve", file));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
