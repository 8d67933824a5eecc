// The page's own WASM module for slow work, taken into this process.
import { existsSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { DIST } from "./server.mjs";

/** The module's `Work`; fails in one sentence when the page is not built. */
export async function work() {
  const folder = existsSync(DIST) && readdirSync(DIST).find((name) => existsSync(join(DIST, name, "work_bg.wasm")));
  if (!folder) throw new Error("The page is not built: run `cargo run --release -- --build-only` first.");
  const { initSync, Work } = await import(pathToFileURL(join(DIST, folder, "work.js")));
  initSync({ module: readFileSync(join(DIST, folder, "work_bg.wasm")) });
  return Work;
}

/** The link of a design: that of the odd designs of the tests with this name, else the name itself. */
export function linkOf(name) {
  const file = join(import.meta.dirname, "..", "reference", "odd_designs.json");
  return JSON.parse(readFileSync(file, "utf8")).designs.find((one) => one.name === name)?.link ?? name;
}
