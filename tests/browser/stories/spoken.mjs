import assert from "node:assert/strict";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";

export const name = "Heard instead of seen: the main screen reads as sentences, and what is announced is worth hearing and comes once";

/** The main screen of the first demo as a screen reader walks through it; `KEEP=1` writes it anew, to be read by a person before it is committed. */
const RECORD = join(import.meta.dirname, "..", "spoken.txt");

/** One line an element: what it is called, what it is, what it says. Addresses and the figures inside the picture are not read out. */
async function walked(page) {
  const tree = await page.locator("body").ariaSnapshot();
  // A slider is read with its words, not with its number.
  const words = new Map(
    await page.getByRole("slider").evaluateAll((sliders) => sliders.map((slider) => [slider.ariaLabel, slider.ariaValueText])),
  );
  return `${tree
    .split("\n")
    .filter((line) => !/^\s*- \/url:/.test(line))
    .map((line) => line.replace(/^(\s*- '?img "[^"]*"'?): .*$/, "$1").replace(/(- slider "([^"]*)"): .*$/, (_, head, label) => `${head}: ${words.get(label)}`))
    .join("\n")
    .replaceAll("\u00a0", " ")}\n`;
}

export async function run({ page, risewright }) {
  await risewright.open("#1/elevation/a");
  await risewright.advised();
  const heard = await walked(page);
  if (process.env.KEEP) await writeFile(RECORD, heard);
  assert.equal(heard, await readFile(RECORD, "utf8"), "the screen reads otherwise than spoken.txt");

  // Nothing is left without a name.
  assert.doesNotMatch(heard, /^\s*- (button|link|slider|checkbox|textbox|combobox|table)( \[|:|$)/m);

  // What is announced, as it is announced.
  await page.evaluate(() => {
    window.announced = [];
    const status = document.querySelector("[role=status]");
    new MutationObserver(() => window.announced.push(status.textContent)).observe(status, { childList: true, characterData: true, subtree: true });
  });
  const announced = async () => {
    // Nothing is announced later than what nobody sees.
    await risewright.drawn();
    await risewright.pass(300);
    return page.evaluate(() => window.announced.splice(0).map((words) => words.replaceAll("\u00a0", " ")));
  };

  // A drag of thirty moves speaks once, when the pointer lets go.
  const ring = await risewright.grip("carriage");
  await page.mouse.move(ring.x, ring.y);
  await page.mouse.down();
  for (let move = 1; move <= 30; move += 1) {
    await page.mouse.move(ring.x + move, ring.y);
    await risewright.drawn();
  }
  assert.deepEqual(await announced(), []);
  await page.mouse.up();
  const [rest, ...more] = await announced();
  assert.deepEqual(more, []);
  assert.match(rest, /^deck \d+ mm, crank \d+ N, worst at \d\.\d\d of its limit: [a-z].+$/);

  // An edit says what has become of the table, undo what was undone.
  await risewright.write("Weight", "95");
  assert.match((await announced()).join("|"), /^Changed: weight\. Crank at most \d+ N, worst at \d\.\d\d of its limit: [^|]+\.$/);
  await page.locator("h1").click();
  await page.keyboard.press("Control+z");
  assert.match((await announced()).join("|"), /^Undone: weight\. Crank at most \d+ N[^|]+$/);

  // A refusal is tied to its field.
  const weight = await risewright.input("Weight");
  await weight.fill("heavy");
  await weight.press("Enter");
  assert.equal(await weight.getAttribute("aria-invalid"), "true");
  const tied = (await weight.getAttribute("aria-describedby")).split(" ");
  const words = await page.evaluate((ids) => ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" "), tied);
  assert.ok(words.includes("heavy"), words);
}
