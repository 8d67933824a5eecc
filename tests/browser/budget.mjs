// What the built page weighs, file by file, against the budget in budget.json: `node budget.mjs`.
import { existsSync, readFileSync } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { DIST } from "./server.mjs";

export const firstLoadBudget = JSON.parse(readFileSync(join(import.meta.dirname, "budget.json")))["first load, Brotli, bytes"];

async function weigh() {
  const names = (await readdir(DIST, { recursive: true })).filter((name) => name.endsWith(".br"));
  const files = await Promise.all(names.map(async (name) => ({ name, bytes: (await stat(join(DIST, name))).size })));
  files.sort((one, other) => other.bytes - one.bytes);
  for (const { name, bytes } of files) console.log(`${String(bytes).padStart(8)}  ${name}`);
  return files.reduce((sum, { bytes }) => sum + bytes, 0);
}

if (process.argv[1] === import.meta.filename) {
  if (!existsSync(DIST)) {
    console.error("The page is not built: run `cargo run --release -- --build-only` first.");
    process.exit(1);
  }
  const total = await weigh();
  console.log(`${String(total).padStart(8)}  bytes in all, of ${firstLoadBudget}`);
  if (total > firstLoadBudget) {
    console.error("The page is over its budget.");
    process.exit(1);
  }
}
