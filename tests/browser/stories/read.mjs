import assert from "node:assert/strict";
import { violations } from "../axe.mjs";
import { DOCUMENTS } from "../page.mjs";

export const name = "Every page that is read: no figure missing, nothing for axe to find, every control by key, no sideways scroll on a phone";
export const patience = 1_200_000;

/** Documents that name no size, and read the same in all units. */
const WITHOUT_SIZES = ["compare", "lessons", "sources"];

export async function run({ page, risewright }) {
  for (const [word, title] of DOCUMENTS) {
    for (const design of ["a", "b"]) {
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.emulateMedia({ colorScheme: "light" });
      await risewright.open(`#1/${word}/${design}`);
      await risewright.done(title);
      let before = "";
      for (const units of ["mm (millimetres)", "in (inches)"]) {
        await risewright.button(units).click();
        await risewright.done(title);
        const words = await page.locator(".reader").innerText();
        const odd = words.match(/.{0,30}(\bNaN\b|\binf\b|undefined|Infinity).{0,30}/);
        assert.equal(odd, null, `${word} ${design}: ${odd?.[0]}`);
        assert.ok(words.length > 400, `${word} says only ${words.length} letters`);
        // The page in these units, not the one that stood there.
        if (!WITHOUT_SIZES.includes(word)) assert.notEqual(words, before, `${word} in ${units}`);
        before = words;
      }
      if (design === "b") continue;
      assert.deepEqual(await violations(page), [], word);
      await reachedByKey(page, risewright, word);
      await page.emulateMedia({ colorScheme: "dark" });
      assert.deepEqual(await violations(page), [], `${word} in the dark`);
      const hidden = await page.evaluate(() => {
        const stays = [...document.querySelectorAll(".reader *")].filter((element) => element.hasAttribute("style"));
        return stays.length;
      });
      assert.equal(hidden, 0, `${word} carries styles in its markup`);
      for (const width of [390, 320]) {
        await page.setViewportSize({ width, height: 844 });
        await risewright.drawn();
        const wide = await page.evaluate(() => document.scrollingElement.scrollWidth);
        assert.ok(wide <= width, `${word} is ${wide} px wide in a window of ${width}`);
      }
    }
  }
}

/** From the tabs on, the Tab key comes by every control of the document, each with its focus in sight. */
async function reachedByKey(page, risewright, word) {
  const wanted = new Set(
    await page.evaluate(() => {
      const all = [...document.querySelectorAll("*")];
      const controls = [...document.querySelectorAll(".reader :is(button, summary, input, [tabindex='0'])")];
      return controls.filter((control) => control.checkVisibility()).map((control) => all.indexOf(control));
    }),
  );
  assert.ok(wanted.size > 0, `${word} offers nothing to do`);
  await page.locator(".tabs a").last().focus();
  for (let press = 0; wanted.size > 0 && press < 400; press += 1) {
    await page.keyboard.press("Tab");
    const focused = await risewright.focused();
    if (!wanted.delete(focused?.place)) continue;
    assert.ok(focused.visible, `${word}: the focus on ${focused.words} does not show`);
    // A table's middle may lie below the window.
    const table = await page.evaluate(() => document.activeElement.matches(".scroll"));
    assert.ok(focused.uncovered || table, `${word}: ${focused.words} lies under something else`);
  }
  assert.equal(wanted.size, 0, `${word}: ${wanted.size} controls are never reached`);
}
