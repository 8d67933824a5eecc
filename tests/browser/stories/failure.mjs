import assert from "node:assert/strict";
import { comeBack, KINDS, NOISE, onTrial } from "../trial.mjs";
import { backAndForth } from "../history.mjs";

export const name = "A failure of any kind says so and brings the page back in 2 s, with the design and every step of its history";
export const alone = true;
export const expected = NOISE;
export const patience = 180_000;

/** Within this time the page is back on a machine that does nothing else, ms; of it so much is for reading that it comes back. */
const PROMISED = 2000;
const READING = 600;
/** A return is a load, and more than one: it may take so many times as long as a plain one, as fast as the machine is just then. */
const LOADS = 4;
/** A trap gives no time to write: what is older than this, ms, was written before. */
const WRITTEN = 1000;

/** Loads the page anew and returns how long it took, ms. */
async function reload(page, risewright) {
  const begun = performance.now();
  await page.reload();
  await risewright.ready();
  return performance.now() - begun;
}

export async function run({ page }) {
  await onTrial(page, async (risewright, fail) => {
    await risewright.open();
    await risewright.kept();
    const links = [await risewright.link()];
    for (const [at, kind] of KINDS.entries()) {
      const plain = await reload(page, risewright);
      await risewright.write("Weight", String(60 + at));
      await risewright.write("Arm, pin to pin", String(540 + at));
      const panics = ["handler", "effect", "task"].includes(kind);
      if (!panics) await risewright.pass(WRITTEN);
      const link = await page.evaluate(() => document.querySelector("[aria-current=page]").hash);
      if (links.at(-1) !== link) links.push(null, link);
      // It was healthy before: the failures are not in a row.
      await page.evaluate(() => {
        const real = performance.now.bind(performance);
        performance.now = () => real() + 60_000;
      });
      const begun = performance.now();
      // The sentence stands there for a short time only: it is waited for before it comes.
      await Promise.all([page.locator(".trouble", { hasText: /failed.*your design/ }).waitFor(), fail(kind)]);
      await comeBack(page);
      const took = performance.now() - begun;
      const most = Math.max(PROMISED, READING + LOADS * plain);
      console.log(`    ${kind}: back after ${took.toFixed(0)} ms; ${PROMISED} ms promised, a plain load took ${plain.toFixed(0)} ms`);
      assert.ok(took <= most, `${kind}: ${took} ms of ${most}`);
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
    await reload(page, risewright);
    await backAndForth(risewright, links);
  });
}
