import assert from "node:assert/strict";
import { LAPTOP } from "../browser.mjs";

export const name = "With keys alone: every control is reached and shows its focus uncovered, and each task of the page can be done";
export const patience = 400_000;
export const device = { ...LAPTOP, permissions: ["clipboard-read", "clipboard-write"] };

/** Tabs through the page until the first control comes again; what was reached, in order. */
async function round(page, risewright) {
  const seen = [];
  for (let press = 0; press < 400; press += 1) {
    await page.keyboard.press("Tab");
    const focused = await risewright.focused();
    if (seen.length && focused?.place === seen[0].place) return seen;
    // Between the last control and the first the browser's own buttons have their turn, and nothing in the page has the focus.
    if (focused) seen.push(focused);
  }
  assert.fail("Tab never comes round");
}

export async function run({ page, risewright }) {
  await risewright.open();
  const value = async (label) => (await risewright.input(label)).inputValue();

  // All groups unfold by key.
  const groups = page.getByRole("complementary", { name: "Inputs" }).locator("details:not([open]) > summary");
  const closed = await groups.allTextContents();
  assert.ok(closed.length > 3);
  for (const words of closed) {
    await risewright.tabTo(words.trim());
    await page.keyboard.press("Enter");
  }
  assert.equal(await groups.count(), 0);

  const seen = await round(page, risewright);
  const places = new Set(seen.map((one) => one.place));
  const missed = (await risewright.reachable()).filter(({ place }) => !places.has(place));
  assert.deepEqual(missed.map(({ words }) => words), [], "never reached");
  assert.deepEqual(seen.filter((one) => !one.visible).map((one) => one.words), [], "the focus does not show");
  assert.deepEqual(seen.filter((one) => !one.uncovered).map((one) => one.words), [], "lies under something else when it has the focus");

  // The name.
  await risewright.tabTo("Name of the design");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("By key");
  await page.keyboard.press("Tab");
  assert.match(await risewright.link(), /~By%20key/);

  // What the picture shows, and which plots.
  await risewright.tabTo("forces");
  await page.keyboard.press("Space");
  await risewright.drawn();
  assert.equal((await risewright.lettering()).filter(({ classes }) => classes.includes("ft")).length, 1, "the load's weight alone");
  await page.keyboard.press("Space");
  await risewright.tabTo("Plots");
  await page.keyboard.press("Enter");
  await risewright.tabTo("sag");
  await page.keyboard.press("Space");
  await risewright.drawn();
  assert.ok(!(await risewright.lettering()).some(({ words }) => words === "Sag at the load"));
  await page.keyboard.press("Space");

  // A finding takes the deck to where it happens.
  await risewright.carriage.press("Home");
  const go = page.locator(".findings .go").first();
  await risewright.tabTo((await go.textContent()).trim().slice(0, 20));
  await page.keyboard.press("Enter");
  await risewright.drawn();
  assert.ok((await risewright.height()) > 521);

  // A switch, a list, a refusal with its way out.
  await risewright.tabTo("Cross boards on A");
  await page.keyboard.press("Space");
  assert.equal(await (await risewright.input("Cross boards on A")).isChecked(), false);
  await risewright.tabTo("Screw moves");
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  assert.equal(await value("Screw moves"), "2");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("ArrowUp");
  assert.equal(await value("Screw moves"), "0");
  await risewright.tabTo("Weight");
  await page.keyboard.press("Control+a");
  await page.keyboard.type("90000 kg");
  await page.keyboard.press("Enter");
  assert.ok((await (await risewright.refusal("Weight")).textContent()).length > 10);
  await risewright.tabTo("Use 2000");
  await page.keyboard.press("Enter");
  assert.equal(await value("Weight"), "2000");

  // Another design, back, and the link.
  await risewright.tabTo("Potting bench");
  await page.keyboard.press("Enter");
  assert.equal(await page.getByLabel("Name of the design").inputValue(), "Potting bench");
  await risewright.tabTo("Undo");
  await page.keyboard.press("Enter");
  assert.equal(await page.getByLabel("Name of the design").inputValue(), "By key");
  await risewright.tabTo("Redo");
  await page.keyboard.press("Enter");
  await risewright.tabTo("Copy link");
  await page.keyboard.press("Enter");
  await risewright.button("Copied").waitFor();
  assert.match(await page.evaluate(() => navigator.clipboard.readText()), /#1\/elevation,at\w+\/b$/);
}
