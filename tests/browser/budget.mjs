// What the built page weighs, file by file, against the budget in budget.json: `node budget.mjs`.
import { existsSync, readFileSync } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { DIST } from "./server.mjs";

const budget = JSON.parse(readFileSync(join(import.meta.dirname, "budget.json")));
export const firstLoadBudget = budget["first load, Brotli, bytes"];

/** The worker's files are asked for when a view needs them, the safe start's after failures, not by the first load. */
const LATER = /\/(work|worker|safe)(_bg)?\.(js|wasm)\.br$/;

async function weigh() {
  const names = (await readdir(DIST, { recursive: true })).filter((name) => name.endsWith(".br"));
  const files = await Promise.all(names.map(async (name) => ({ name, bytes: (await stat(join(DIST, name))).size })));
  files.sort((one, other) => other.bytes - one.bytes);
  for (const { name, bytes } of files) console.log(`${String(bytes).padStart(8)}  ${name}`);
  const sum = (some) => some.reduce((total, { bytes }) => total + bytes, 0);
  return [
    ["first load", sum(files.filter(({ name }) => !LATER.test(name))), firstLoadBudget],
    ["all files", sum(files), budget["all files, Brotli, bytes"]],
  ];
}

if (process.argv[1] === import.meta.filename) {
  if (!existsSync(DIST)) {
    console.error("The page is not built: run `cargo run --release -- --build-only` first.");
    process.exit(1);
  }
  for (const [what, bytes, most] of await weigh()) {
    console.log(`${String(bytes).padStart(8)}  bytes, ${what}, of ${most}`);
    if (bytes > most) {
      console.error(`The page is over its budget: ${what}.`);
      process.exitCode = 1;
    }
  }
}
