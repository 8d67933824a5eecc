import assert from "node:assert/strict";

export const name = "From a check to the part it is about: its row opens, its height is gone to, what would help is taken over and taken back";

export async function run({ page, risewright }) {
  await risewright.open("#1/strength/a");
  await risewright.done("Strength");
  const rows = page.locator(".reader details[data-fold]:has([data-go])");
  assert.ok((await rows.count()) > 40);

  // A row opened stays open while the design changes beneath it.
  const row = page.locator(".reader details:has([data-take])").first();
  const fold = await row.getAttribute("data-fold");
  await row.locator("summary").first().click();
  const link = await risewright.link();
  const words = await page.locator(".reader").textContent();
  await row.locator("[data-take]").first().click();
  await page.waitForFunction((old) => document.querySelector(".tabs a[aria-current]").hash !== old, link);
  await risewright.done("Strength");
  assert.notEqual(await page.locator(".reader").textContent(), words, "the page of the design that was taken over");
  assert.equal(await page.locator(`.reader details[data-fold="${fold}"]`).evaluate((element) => element.open), true);
  await page.keyboard.press("Control+z");
  assert.equal(await risewright.link(), link);
  // Until the worker has answered, the page of the design before stands there.
  await page.waitForFunction((words) => document.querySelector(".reader").textContent === words, words);

  // The part, where it is asked the most.
  const go = page.locator(`.reader details[data-fold="${fold}"] [data-go]`).first();
  const height = Number(await go.getAttribute("data-go"));
  await go.click();
  await page.locator(".figure").waitFor();
  await risewright.drawn();
  assert.ok(Math.abs((await risewright.height()) / 1000 - height) < 5e-4, `${await risewright.height()} mm, not ${height} m`);
  const unmark = risewright.button(/^Unmark/);
  const marked = await risewright.picture();
  await unmark.click();
  await risewright.drawn();
  assert.notEqual(await risewright.picture(), marked);
  assert.equal(await unmark.count(), 0);
  await page.goBack();
  await risewright.read("Strength");
}
