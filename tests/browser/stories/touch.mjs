import assert from "node:assert/strict";
import { PHONE } from "../browser.mjs";
import { drag, tap } from "../touch.mjs";

export const name = "On a phone one finger drags carriage and deck; anywhere else it scrolls";
export const device = PHONE;

export async function run({ page, risewright }) {
  await risewright.open();
  const scrolled = () => page.evaluate(() => scrollY);

  const deck = await risewright.grip("deck");
  const before = await risewright.height();
  await drag(page, deck, { x: deck.x, y: deck.y - 30 });
  await risewright.drawn();
  assert.ok((await risewright.height()) > before + 20, "the deck went up");
  assert.equal(await scrolled(), 0, "and the page stayed");

  const ring = await risewright.grip("carriage");
  const high = await risewright.height();
  await drag(page, ring, { x: ring.x + 15, y: ring.y });
  await risewright.drawn();
  assert.ok((await risewright.height()) < high - 5, "the carriage went out, so the deck came down");
  assert.equal(await scrolled(), 0);

  const low = await risewright.height();
  await page.evaluate(() => addEventListener("scrollend", () => (window.rests = true)));
  await drag(page, { x: 60, y: 560 }, { x: 60, y: 260 });
  // While the page still glides a tap would only stop it.
  await page.waitForFunction(() => window.rests);
  assert.ok((await scrolled()) > 100, "a finger elsewhere scrolls");
  assert.equal(await risewright.height(), low, "and moves nothing");

  // The crank strip stays at hand at the lower edge.
  const raise = await risewright.button("Raise").boundingBox();
  assert.ok(raise.y + raise.height <= 844 && raise.height >= 44);
  const turns = await risewright.reading("turns").textContent();
  await tap(page, { x: raise.x + 20, y: raise.y + 20 });
  await page.waitForFunction((turns) => document.querySelector("[data-reading=turns]").textContent !== turns, turns);
  await risewright.button("Stop").tap();
  assert.ok((await risewright.height()) > low);

  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= 390, `nothing scrolls sideways, ${wide} px`);
}
