import assert from "node:assert/strict";
import { PHONE } from "../browser.mjs";
import { DOCUMENTS } from "../page.mjs";

export const name = "Where a finger points, on a phone and on a tablet: whatever can be touched is 44 px high and wide, or has its words to touch as well";
export const device = PHONE;
export const patience = 600_000;

const TABLET = { width: 1024, height: 768 };
const SIDE = 44;

/**
 * Controls whose place to touch is too small: what lies under the finger at a distance of half a side from the middle, in the directions up,
 * down, left, right, is the control, its label, or something within. Links in the middle of a sentence are as high as its line (WCAG 2.2,
 * 2.5.8, exception "inline").
 */
function small(page) {
  return page.evaluate((side) => {
    const shown = (element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: false });
    const controls = [...document.querySelectorAll("button, summary, select, input, nav a, circle.hold")].filter(shown);
    const tall = (element) => {
      const own = element.closest("label") ?? element.labels?.[0];
      const boxes = [element, own].filter(Boolean).map((part) => part.getBoundingClientRect());
      const top = Math.min(...boxes.map((box) => box.top));
      const bottom = Math.max(...boxes.map((box) => box.bottom));
      const left = Math.min(...boxes.map((box) => box.left));
      const right = Math.max(...boxes.map((box) => box.right));
      return { height: bottom - top, width: right - left };
    };
    return controls
      .filter((element) => !element.classList.contains("carriage-slider") && !element.closest("p.inline"))
      .map((element) => ({ element, ...tall(element) }))
      .filter(({ height, width }) => width > 0 && (height < side - 0.5 || width < side - 0.5))
      .map(({ element, height, width }) => {
        const words = element.getAttribute("aria-label") ?? element.labels?.[0]?.textContent ?? element.textContent;
        return `${element.localName}.${element.className.baseVal ?? element.className} “${words.trim().slice(0, 40)}” ${Math.round(width)} × ${Math.round(height)}`;
      });
  }, SIDE);
}

export async function run({ page, risewright }) {
  for (const size of [PHONE.viewport, TABLET]) {
    await page.setViewportSize(size);
    await risewright.open();
    await risewright.drawn();
    // All groups of inputs unfolded.
    await page.locator(".inputs details").evaluateAll((all) => all.forEach((group) => (group.open = true)));
    await page.waitForFunction(() => [...document.querySelectorAll(".inputs details")].every((group) => group.querySelector(".row")));
    assert.deepEqual(await small(page), [], `elevation, ${size.width} px`);
    for (const [word, title] of DOCUMENTS) {
      await risewright.follow(`#1/${word}/a`);
      await risewright.done(title);
      assert.deepEqual(await small(page), [], `${word}, ${size.width} px`);
    }
  }
}
