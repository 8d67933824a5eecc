// The built page on a port of its own, by the program that serves it to people.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";

export const ROOT = join(import.meta.dirname, "..", "..");
/** The built page; the environment variable DIST names another one. */
export const DIST = process.env.DIST ?? join(ROOT, "dist");

/** Where cargo puts what it builds. */
export const TARGET = process.env.CARGO_TARGET_DIR ?? join(ROOT, "target");
/** The page that fails on demand; the environment variable TRIAL names another one. */
export const TRIAL = process.env.TRIAL ?? join(TARGET, "trial");

const PROGRAM = join(TARGET, "release", "risewright-serve");
const STARTUP = 10_000; // ms; it only opens a port

/** Serves a built page. Resolves to { address, stop() }; fails in one sentence when the page or the program is not built. */
export async function serve(dist = DIST) {
  if (!existsSync(PROGRAM) || !existsSync(join(dist, "index.html"))) {
    const options = dist === TRIAL ? `--build-only --trial --dist ${TRIAL}` : "--build-only";
    throw new Error(`The page is not built: run \`cargo run --release -- ${options}\` first.`);
  }
  const child = spawn(PROGRAM, ["--no-build", "--port", "0", "--dist", dist], { stdio: ["ignore", "pipe", "inherit"] });
  const stop = () => child.kill();
  const address = await new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error("The server printed no address.")), STARTUP);
    let said = "";
    child.stdout.on("data", (words) => {
      said += words;
      const found = said.match(/http:\/\/\S+/);
      if (found) {
        clearTimeout(late);
        resolve(found[0]);
      }
    });
    child.once("exit", (code) => reject(new Error(`The server ended with ${code}.`)));
  }).catch((trouble) => {
    stop();
    throw trouble;
  });
  return { address, stop };
}
