// Pictures of the page for a person to look at, in shots/: `node shots.mjs [fragment ...]`, e.g. `node shots.mjs '' '#1/strength/'`.
import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { launch, DESKTOP, LAPTOP, PHONE } from "./browser.mjs";
import { RisewrightPage } from "./page.mjs";
import { serve } from "./server.mjs";

const SIZES = { desktop: DESKTOP, laptop: LAPTOP, phone: PHONE };
const PAPER = { viewport: { width: 794, height: 1123 } }; // A4 at 96 px to the inch

const folder = join(import.meta.dirname, "shots");
const fragments = process.argv.length > 2 ? process.argv.slice(2) : [""];

/** `#1/strength/…` to `strength`. */
const viewOf = (fragment) => fragment.split("/")[1] || "main";

await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
const server = await serve();
const browser = await launch();
try {
  for (const fragment of fragments) {
    const view = viewOf(fragment);
    for (const [size, device] of Object.entries(SIZES)) {
      for (const colorScheme of ["light", "dark"]) {
        await visit({ ...device, colorScheme }, fragment, async (page) => {
          await page.screenshot({ path: join(folder, `${view}-${size}-${colorScheme}.png`) });
          if (device === PHONE) await page.screenshot({ path: join(folder, `${view}-${size}-${colorScheme}-whole.png`), fullPage: true });
        });
      }
    }
    await visit(PAPER, fragment, async (page) => {
      await page.pdf({ path: join(folder, `${view}-print.pdf`), preferCSSPageSize: true, printBackground: true });
      await page.emulateMedia({ media: "print" });
      await page.screenshot({ path: join(folder, `${view}-print.png`), fullPage: true });
    });
  }
} finally {
  await browser.close();
  server.stop();
}
console.log(`Pictures stand in ${folder}`);

async function visit(device, fragment, look) {
  const context = await browser.newContext(device);
  const page = await context.newPage();
  await new RisewrightPage(page, server.address).open(fragment);
  await look(page);
  await context.close();
}
