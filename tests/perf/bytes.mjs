// What every file of the built page weighs: as it is, and as it goes over the wire.
import { existsSync, readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { DIST } from "../browser/server.mjs";
import { heading } from "./table.mjs";

const ENDINGS = ["", ".gz", ".br"];

export function weighed() {
  heading("Bytes of each file: raw, gzip, Brotli");
  const files = readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.(gz|br)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name));
  const sums = ENDINGS.map(() => 0);
  for (const file of files.sort()) {
    const sizes = ENDINGS.map((ending) => (existsSync(file + ending) ? statSync(file + ending).size : Number.NaN));
    sizes.forEach((size, at) => (sums[at] += size));
    line(relative(DIST, file), sizes);
  }
  line("all files", sums);
}

function line(words, sizes) {
  console.log(words.padEnd(40) + sizes.map((size) => String(size).padStart(10)).join(""));
}
