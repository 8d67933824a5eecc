// Chromium with an empty profile, as the tests and the screenshots use it.
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";

const CANDIDATES = [process.env.CHROMIUM, "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export const DESKTOP = { viewport: { width: 1440, height: 900 } };
export const LAPTOP = { viewport: { width: 1280, height: 720 } };
export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true };

/** Starts Chromium; each newContext() of it is a profile of its own. */
export async function launch() {
  const executablePath = CANDIDATES.find((path) => path && existsSync(path));
  if (!executablePath) {
    throw new Error("Chromium is missing: install it, or name it in the environment variable CHROMIUM.");
  }
  return chromium.launch({ executablePath, args: FLAGS });
}
