import assert from "node:assert/strict";

export const name = "A press on an arm shows it cut free, and its forces cancel";

export async function run({ page, risewright }) {
  await risewright.open();
  // Between the ring and the centre pin of the lowest stage lies an arm.
  const ring = await risewright.grip("carriage");
  await page.mouse.click(ring.x - 55, ring.y - 34);
  await risewright.read("Forces on a part");
  await page.locator("button[data-answer=part][aria-pressed=true]", { hasText: /arm [AB]1/ }).waitFor();
  const sums = page.locator(".reader tfoot td.n");
  await sums.first().waitFor();
  const told = await sums.allInnerTexts();
  assert.ok(told.some(Boolean), "no sum is told");
  for (const words of told) assert.match(words, /^(−?0(\.0+)?)?$/, `sum ${words}`);

  await page.getByRole("button", { name: "deck", exact: true }).click();
  await page.locator("button[data-answer=part][aria-pressed=true]", { hasText: "deck" }).waitFor();
  // The picture comes after the button is marked.
  await page.waitForFunction(() => document.querySelector(".figure [role=img]").ariaLabel.includes("the deck cut free"));
  const before = await page.locator(".figure [role=img]").getAttribute("aria-label");
  const slider = page.getByRole("slider", { name: "Deck height" });
  await slider.focus();
  await page.keyboard.press("Home");
  await page.waitForFunction((before) => document.querySelector(".figure [role=img]").getAttribute("aria-label") !== before, before);
}
