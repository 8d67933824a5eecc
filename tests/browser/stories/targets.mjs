import assert from "node:assert/strict";
import { violations } from "../axe.mjs";

export const name = "Targets bring tables, or say what clashes; a proposal is opened and undone; by keys alone; stopped halfway";
export const alone = true;
export const patience = 600_000;

const field = (page, label) => page.locator(".reader").getByLabel(label, { exact: true });

async function answer(page, label, text) {
  await field(page, label).fill(text);
  await field(page, label).press("Enter");
  // The page with this answer stands there before the next one is written.
  await page.locator(".reader:not([aria-busy])").waitFor();
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
  await page.locator(".reader [data-open]").first().waitFor({ timeout: 60_000 });
  console.log(`  first tables after ${Date.now() - begun} ms`);
  await risewright.done("Targets");
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
  await risewright.pass(500);
  assert.equal(await page.locator(".reader").innerHTML(), known);

  // Other targets do not set it going again.
  const counts = [];
  for (const height of ["210 mm", "200 mm"]) {
    await answer(page, "Lowest deck, at most", height);
    await page.getByText("The targets were changed since these tables were looked for.").waitFor();
    await page.getByText("Stopped; what is known stands below.").waitFor();
    counts.push(await page.locator(".reader").getByText(/combinations done with/).textContent());
  }
  // The first brings what was done until Stop, which may be more than was shown by then.
  assert.equal(counts[0], counts[1]);

  // Targets that no table keeps, whatever gives.
  const none = page.getByRole("heading", { name: "Nothing keeps all limits", exact: true });
  await risewright.button("Look for tables").click();
  await none.waitFor({ timeout: 120_000 });
  await page.getByText("Even without limits on its figures no table of those looked at holds").waitFor();
  assert.equal(await page.locator(".reader [data-open]").count(), 0);

  // Targets that tables would keep but for one: by how much it would have to give, and the table that does then.
  // The second is written while the page with the first comes, and is heard all the same.
  const lowest = field(page, "Lowest deck, at most");
  const crank = field(page, "Crank force, at most");
  await lowest.fill("520 mm");
  await lowest.press("Enter");
  await crank.fill("20 N");
  await page.locator(".reader:not([aria-busy])").waitFor();
  await crank.press("Enter");
  await page.locator(".reader:not([aria-busy])").waitFor();
  await risewright.button("Look for tables").click();
  await page.locator(".reader li", { hasText: /instead of 20\sN/ }).locator("[data-open]").waitFor({ timeout: 120_000 });
  await none.waitFor();
  await risewright.done("Targets");
}
