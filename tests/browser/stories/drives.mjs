import assert from "node:assert/strict";
import { solved } from "../native.mjs";

export const name = "Every drive is drawn, dragged and computed: carriage pulled and pushed, side pivots, inclined strut";

const LINKS = {
  "deck carriage, pushed from the far end": "a.dr1.de1.dao074",
  "base carriage, pushed from the far end": "a.de1.dao074",
  "side pivots": "a.dr2",
  "strut from base to arm": "a.dr3.pxkkqo.py-1dds.qf1aao",
  "strut from arm to arm": "a.dr3.pa3.qa4.pfn5c.qf1i0g",
  "strut from base to deck": "a.dr3.pxh5a8.qa1.qx3fgg",
};

const kn = (newtons) => Math.round(newtons / 10) / 100;

export async function run({ page, risewright }) {
  for (const [drive, link] of Object.entries(LINKS)) {
    await risewright.open(`#1/elevation/${link}`);
    await risewright.carriage.press("Home");
    await risewright.drawn();
    const low = await risewright.height();
    await risewright.carriage.press("PageUp");
    await risewright.drawn();
    const height = await risewright.height();
    assert.ok(height > low, `${drive}: ${low} to ${height}`);
    const [native] = (await solved(link, [height / 1000])).results;
    assert.deepEqual(await risewright.values("Screw force"), [native.F_raise, native.F0, native.F_lower].map(kn), drive);
    assert.equal(Number(await risewright.reading("raise").textContent()), Math.round(native.crank_force), drive);
    const words = (await page.locator(".figure text").allTextContents()).join(" ");
    assert.ok(!/NaN|Infinity|undefined/.test(words), `${drive}: ${words}`);
  }
}
