import assert from "node:assert/strict";
import { violations } from "../axe.mjs";

export const name = "Targets bring tables, or say what clashes; a proposal is opened and undone; by keys alone; stopped halfway";
export const alone = true;
export const patience = 180_000;

const field = (page, label) => page.locator(".reader").getByLabel(label, { exact: true });

async function answer(page, label, text) {
  await field(page, label).fill(text);
  await field(page, label).press("Enter");
}

export async function run({ page, risewright }) {
  await risewright.open("#1/targets/a");
  await risewright.read("Targets");

  // Nonsense is kept, and told.
  await answer(page, "Crank force, at most", "much");
  await page.locator(".asked .fault").first().waitFor();
  assert.equal(await field(page, "Crank force, at most").inputValue(), "much");
  await answer(page, "Crank force, at most", "150 N");
  await page.waitForFunction(() => !document.querySelector(".asked .fault"));

  const begun = Date.now();
  await risewright.button("Look for tables").click();
  await page.locator(".reader [data-open]").first().waitFor({ timeout: 30_000 });
  console.log(`  first tables after ${Date.now() - begun} ms`);
  await page.waitForFunction(() => !document.querySelector(".working"), null, { timeout: 90_000 });
  console.log(`  all after ${Date.now() - begun} ms`);
  assert.deepEqual(await violations(page), []);
  await page.setViewportSize({ width: 390, height: 844 });
  await risewright.drawn();
  assert.ok((await page.evaluate(() => document.scrollingElement.scrollWidth)) <= 390);
  await page.setViewportSize({ width: 1440, height: 900 });

  // Opened by keys, and taken back.
  await page.locator(".reader [data-open]").nth(1).focus();
  await page.keyboard.press("Enter");
  await page.locator(".figure .moving").waitFor({ state: "attached" });
  const opened = await risewright.link();
  assert.notEqual(opened.split("/")[2], "a");
  await page.keyboard.press("Control+z");
  await page.waitForFunction(() => location.hash.startsWith("#1/elevation/a") && !location.hash.includes("."));

  // What was found is still there.
  await risewright.view("Targets");
  assert.ok((await page.locator(".reader [data-open]").count()) >= 2);

  // The search for other targets, stopped halfway: nothing comes any more.
  await answer(page, "Crank force, at most", "140 N");
  await risewright.button("Look for tables").click();
  const stop = page.locator(".working").getByRole("button", { name: "Stop" });
  await stop.click({ timeout: 20_000 });
  await page.getByText("Stopped; what is known stands below.").waitFor();
  const known = await page.locator(".reader").innerHTML();
  await page.waitForTimeout(500);
  assert.equal(await page.locator(".reader").innerHTML(), known);

  // Targets that cannot be met.
  await answer(page, "Lowest deck, at most", "200 mm");
  await risewright.button("Look for tables").click();
  await page.waitForFunction(() => !document.querySelector(".reader [data-open], .working"), null, { timeout: 90_000 });
}
