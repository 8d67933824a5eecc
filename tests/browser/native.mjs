// The same solver outside the browser: `core/examples/describe` and `solve`, as a person would call them.
import { execFile } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { TARGET } from "./server.mjs";

const execute = promisify(execFile);

/** Runs a built program and returns what it prints. Other stories go on meanwhile. */
async function example(name, ...words) {
  const program = join(TARGET, "release", "examples", name);
  if (!existsSync(program)) {
    throw new Error("The solver's programs are not built: run `cargo build --release -p risewright --examples` first.");
  }
  return (await execute(program, words)).stdout;
}

/** What `solve` prints for the design of a link with the deck at `heights`, metres. */
export async function solved(link, heights) {
  const folder = mkdtempSync(join(tmpdir(), "mechanism-"));
  try {
    const file = join(folder, "mechanism.json");
    writeFileSync(file, await example("describe", link, ...heights.map(String)));
    return JSON.parse(await example("solve", file));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
