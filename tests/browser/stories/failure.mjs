import assert from "node:assert/strict";
import { comeBack, KINDS, NOISE, onTrial } from "../trial.mjs";
import { backAndForth } from "../history.mjs";

export const name = "A failure of any kind says so and brings the page back in 2 s, with the design and every step of its history";
export const alone = true;
export const expected = NOISE;

const MOST = 2000; // ms
/** A trap gives no time to write: what is older than this, ms, was written before. */
const WRITTEN = 1000;

export async function run({ page }) {
  await onTrial(page, async (risewright, fail) => {
    await risewright.open();
    const links = [await risewright.link()];
    for (const [at, kind] of KINDS.entries()) {
      await risewright.write("Weight", String(60 + at));
      await risewright.write("Arm, pin to pin", String(540 + at));
      const panics = ["handler", "effect", "task"].includes(kind);
      if (!panics) await page.waitForTimeout(WRITTEN);
      const link = await page.evaluate(() => document.querySelector("[aria-current=page]").hash);
      if (links.at(-1) !== link) links.push(null, link);
      // It was healthy before: the failures are not in a row.
      await page.evaluate(() => {
        const real = performance.now.bind(performance);
        performance.now = () => real() + 60_000;
      });
      const begun = performance.now();
      await fail(kind);
      const notice = page.locator(".trouble");
      await notice.waitFor();
      assert.match(await notice.textContent(), /failed.*your design/);
      await comeBack(page);
      const took = performance.now() - begun;
      console.log(`    ${kind}: back after ${took.toFixed(0)} ms`);
      assert.ok(took <= MOST, `${kind}: ${took} ms`);
      assert.equal(await risewright.link(), link, kind);
      await risewright.button("Close").click();
      // The two edits, one by one.
      await risewright.button(/^Undo: Arm/).click();
      links[links.length - 2] = await risewright.link();
      await risewright.button(/^Redo: Arm/).click();
      assert.equal(await risewright.link(), link);
    }
    await backAndForth(risewright, links);

    // A page that is loaded anew for another reason has its history too.
    await page.reload();
    await risewright.ready();
    await backAndForth(risewright, links);
  });
}
