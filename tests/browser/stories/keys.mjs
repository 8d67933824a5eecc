import assert from "node:assert/strict";

export const name = "With keys alone: move the deck, raise it, change an input, switch units, undo";

export async function run({ page, risewright }) {
  await risewright.open();

  await risewright.tabTo("Carriage");
  await page.keyboard.press("Home");
  assert.match(await risewright.carriage.getAttribute("aria-valuetext"), /^deck 520\smm, 0\.0 of 64\.2 turns$/);
  await page.keyboard.press("ArrowUp");
  assert.match(await risewright.carriage.getAttribute("aria-valuetext"), /^deck 521\smm/);
  await page.keyboard.press("PageUp");
  assert.match(await risewright.carriage.getAttribute("aria-valuetext"), /^deck 571\smm/);
  await page.keyboard.press("End");
  assert.match(await risewright.carriage.getAttribute("aria-valuetext"), /^deck 1160\smm, 64\.2 of 64\.2 turns$/);
  assert.match(await page.getByRole("status").textContent(), /^deck 1160\smm, crank \d+\sN, worst at \d\.\d\d of its limit: [a-z].+$/);

  await risewright.tabTo("Lower");
  await page.keyboard.press("Enter");
  await page.waitForTimeout(600);
  await page.keyboard.press("Escape");
  const lowered = await risewright.height();
  assert.ok(lowered < 1160 && lowered > 1100, `${lowered}`);
  await page.waitForTimeout(200);
  assert.equal(await risewright.height(), lowered, "Escape stops the crank");

  await risewright.tabTo("Crank");
  await page.keyboard.press("Home");
  await page.keyboard.press("PageUp");
  assert.equal(await risewright.reading("turns").textContent(), "1.0");

  await risewright.tabTo("Arm, pin to pin");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("21 in");
  await page.keyboard.press("Enter");
  assert.equal(await (await risewright.input("Arm, pin to pin")).inputValue(), "533.4");
  await page.keyboard.press("Shift+Tab");
  await page.keyboard.press("Tab");

  await risewright.tabTo("in (inches)");
  await page.keyboard.press("Space");
  assert.equal(await (await risewright.input("Arm, pin to pin")).inputValue(), "21");
  await page.keyboard.press("Control+z");
  assert.equal(await (await risewright.input("Arm, pin to pin")).inputValue(), "20.47244");
}
