import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { DOCUMENTS } from "../page.mjs";

export const name = "Every file that a page offers is saved under its name and is what its ending says";
export const patience = 240_000;

const BEGINS = {
  csv: /^[^\r\n]+,[^\r\n]+\r\n/,
  svg: /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/,
  dxf: /^\s*0\r?\nSECTION/,
};

export async function run({ page, risewright }) {
  let saved = 0;
  for (const [word, title] of DOCUMENTS) {
    await risewright.open(`#1/${word}/a`);
    await risewright.done(title);
    await page.evaluate(() => document.querySelectorAll(".reader details").forEach((fold) => (fold.open = true)));
    const buttons = page.locator(".reader button[data-save]");
    for (let at = 0; at < (await buttons.count()); at += 1) {
      const asked = await buttons.nth(at).getAttribute("data-save");
      const [download] = await Promise.all([page.waitForEvent("download"), buttons.nth(at).click()]);
      assert.equal(download.suggestedFilename(), asked);
      const text = await readFile(await download.path(), "utf8");
      const ending = asked.split(".").at(-1);
      assert.match(text, BEGINS[ending], asked);
      saved += 1;
    }
  }
  assert.ok(saved >= 8, `only ${saved} files are offered`);
}
