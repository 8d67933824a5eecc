import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { LAPTOP } from "../browser.mjs";

export const name = "With keys alone, one main task of every view that is read: go there by Tab and Enter, do it, hear what came of it";
export const device = LAPTOP;
export const patience = 240_000;

/** Where this story may touch nothing but keys. */
class Keys {
  constructor(page, risewright) {
    this.page = page;
    this.risewright = risewright;
  }

  async press(...keys) {
    for (const key of keys) await this.page.keyboard.press(key);
    await this.risewright.drawn();
  }

  /** Tab to what is called so, then the key that does it. */
  async do(words, key = "Enter") {
    await this.risewright.tabTo(words);
    await this.press(key);
  }

  async write(words, text) {
    await this.risewright.tabTo(words);
    await this.press("Control+a");
    await this.page.keyboard.type(text);
    await this.press("Enter");
  }

  /** To a view by its tab. */
  async view(title) {
    await this.do(title);
    await this.risewright.read(title);
  }

  /** Waits until the status says something. */
  async hears(words) {
    await this.page.getByRole("status").filter({ hasText: words }).waitFor();
  }
}

export async function run({ page, risewright }) {
  await risewright.open("#1/elevation/a");
  const keys = new Keys(page, risewright);

  // A check's part is gone to, and what would mend it is taken, and taken back.
  await keys.view("Strength");
  await risewright.done("Strength");
  await keys.do("Strengths and factors");
  assert.ok(await page.locator("summary", { hasText: "Strengths and factors" }).evaluate((summary) => summary.parentElement.open));
  await page.keyboard.press("Control+Home");
  const row = page.locator(".checks summary").first();
  await keys.do((await row.evaluate((summary) => summary.textContent)).trim().slice(0, 24));
  const before = await risewright.link();
  await keys.do("Take it");
  await page.waitForFunction((before) => !document.querySelector("[aria-current=page]").href.endsWith(before), before);
  await keys.hears(/^Changed: .+ Crank at most \d+\sN, worst at .+ of its limit: .+\.$/);
  await keys.press("Control+z");
  await keys.hears(/^Undone: /);
  assert.equal(await risewright.link(), before);

  // Another part cut free, lowering, lower down.
  await keys.view("Forces");
  await keys.do("arm B1");
  await page.locator(".reader button[aria-pressed=true]", { hasText: "arm B1" }).waitFor();
  await keys.do("lowering");
  await page.locator(".reader button[aria-pressed=true]", { hasText: "lowering" }).waitFor();

  // A push at the deck.
  await keys.view("Sway");
  await keys.do("Sideways push at the deck", "End");
  assert.match(await page.getByRole("slider", { name: "Sideways push at the deck" }).getAttribute("aria-valuetext"), /N/);

  // Files of sheets and lists.
  for (const [title, words, within] of [
    ["Sheets", "Save this sheet (DXF)", "ENTITIES"],
    ["Hardware", "Save this list (CSV)", ","],
  ]) {
    await keys.view(title);
    await risewright.done(title);
    const [file] = await Promise.all([page.waitForEvent("download"), keys.do(words)]);
    const text = await readFile(await file.path(), "utf8");
    assert.ok(text.length > 100 && text.includes(within), words);
  }

  // A hole table unfolds.
  await keys.view("Drilling");
  const part = page.locator(".reader summary").first();
  const words = (await part.textContent()).trim();
  const open = await part.evaluate((summary) => summary.parentElement.open);
  await keys.do(words.slice(0, 20));
  assert.equal(await part.evaluate((summary) => summary.parentElement.open), !open);

  // A measure is ticked.
  await keys.view("Build order");
  const first = page.locator(".tick").first();
  await keys.do((await first.textContent()).trim().slice(0, 24), "Space");
  assert.ok(await first.locator("input").isChecked());

  // What helps is taken and taken back.
  await keys.view("What helps");
  await risewright.done("What helps");
  await keys.do("Take it");
  await keys.hears(/^Changed: /);
  await keys.press("Control+z");
  assert.match(await risewright.link(), /^#1\/helps\/a$/);

  // Set aside, change, compare.
  await keys.view("Compare");
  await keys.do("Set the present design aside");
  await keys.write("Weight", "95");
  await page.locator(".reader td", { hasText: "95" }).first().waitFor();

  // On the shelf, by another name, and off again.
  await keys.view("Shelf");
  await keys.do("Put it on the shelf");
  await page.locator(".shelf-card").waitFor();
  await keys.do("Take off");
  await keys.do("Put it back");
  await page.locator(".shelf-card").waitFor();

  // A lesson is opened and left.
  await keys.view("Lessons");
  await keys.do("The tall load");
  await page.locator(".lesson").waitFor();
  const deck = page.getByRole("slider", { name: "Deck height" });
  await keys.do("Deck height", "Home");
  const lowest = await deck.inputValue();
  await keys.press("End");
  assert.ok(Number(await deck.inputValue()) > Number(lowest));
}
