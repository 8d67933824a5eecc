import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { DOCUMENTS } from "../page.mjs";

export const name = "Every file that a page offers is saved under its name and is what its ending says";
export const patience = 240_000;

const BEGINS = {
  json: /^\{\n  "format": "risewright (design|shelf)"/,
  csv: /^[^\r\n]+,[^\r\n]+\r\n/,
  svg: /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/,
  dxf: /^(\s*999\r?\n[^\n]*\n)*\s*0\r?\nSECTION/,
};

export async function run({ page, risewright }) {
  let saved = 0;
  for (const [word, title] of DOCUMENTS) {
    let count = 1;
    for (let at = 0; at < count; at += 1) {
      // The browser asks back when one page has saved some ten files.
      if (at % 8 === 0) {
        await risewright.open(`#1/${word}/a`);
        await risewright.done(title);
        await page.evaluate(() => document.querySelectorAll(".reader details").forEach((fold) => (fold.open = true)));
      }
      const buttons = page.locator(".reader button[data-save]");
      count = await buttons.count();
      if (count === 0) break;
      const asked = await buttons.nth(at).getAttribute("data-save");
      const offered = page.waitForEvent("download").catch(() => assert.fail(`${asked} does not come`));
      await buttons.nth(at).click();
      const download = await offered;
      assert.equal(download.suggestedFilename(), asked);
      const text = await readFile(await download.path(), "utf8");
      assert.match(text, BEGINS[asked.split(".").at(-1)], asked);
      saved += 1;
    }
  }
  assert.ok(saved >= 8, `only ${saved} files are offered`);
}
