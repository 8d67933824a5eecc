import assert from "node:assert/strict";
import { RisewrightPage } from "../page.mjs";

export const name = "What is ticked in the build order stays ticked: in other units, after a reload, in another tab; not where its figures change";

const FIRST = "Paper-stack lift";

export async function run({ page, risewright, context, address }) {
  await risewright.open("#1/steps/a");
  await risewright.done("Build order");
  const boxes = page.locator(".tests input");
  const count = await boxes.count();
  assert.ok(count > 10, `${count} tests`);
  const ticked = async (on = page) => {
    const all = await on.locator(".tests input").evaluateAll((boxes) => boxes.map((box) => box.checked));
    return all.flatMap((is, at) => (is ? [at] : []));
  };
  const sees = (on, wanted) =>
    on.waitForFunction(
      (wanted) => {
        const boxes = [...document.querySelectorAll(".tests input")];
        return boxes.length && JSON.stringify(boxes.flatMap((box, at) => (box.checked ? [at] : []))) === wanted;
      },
      JSON.stringify(wanted),
    );

  // One whose words hold this design's figures, one whose words hold none that a weight changes, and one that is given up again.
  const lengths = page.locator(".tests .tick", { hasText: "mm" });
  const at = await boxes.evaluateAll((all) => all.findIndex((box) => /pin to pin/i.test(box.parentElement.textContent)));
  assert.ok(at >= 0 && (await lengths.count()) > 0, "a test tells the distance from pin to pin");
  for (const place of [0, at, count - 1]) await boxes.nth(place).check();
  await boxes.nth(count - 1).uncheck();
  const both = [0, at].toSorted((one, other) => one - other);
  assert.deepEqual(await ticked(), both);

  await risewright.button(/^in/).first().click();
  await page.locator(".tests .tick", { hasText: "in" }).first().waitFor();
  await page.waitForFunction(() => !/\d mm/.test(document.querySelector(".tests").textContent));
  assert.deepEqual(await ticked(), both, "in inches");
  await risewright.button(/^mm/).first().click();

  // Another tab, which ticks one more.
  const other = new RisewrightPage(await context.newPage(), address);
  await other.open("#1/steps/a");
  await other.done("Build order");
  await sees(other.page, both);
  await other.page.locator(".tests input").nth(count - 1).check();
  await sees(page, [...both, count - 1]);
  await other.page.locator(".tests input").nth(count - 1).uncheck();
  await other.page.close();

  await page.reload();
  await risewright.done("Build order");
  await sees(page, both);

  // Longer arms: what was measured at the old ones is to be measured anew; taken back, it has been measured.
  await risewright.write("Arm, pin to pin", "870 mm");
  await sees(page, both.filter((place) => place !== at));
  await risewright.button(/^Undo/).click();
  await sees(page, both);

  // A build of another name has ticks of its own.
  const named = page.getByLabel("Name of the design");
  await named.fill("Another lift");
  await named.press("Enter");
  await sees(page, []);
  await named.fill(FIRST);
  await named.press("Enter");
  await sees(page, both);

  await risewright.button("Take all ticks away").click();
  await sees(page, []);
  await page.reload();
  await risewright.done("Build order");
  assert.deepEqual(await ticked(), []);
}
