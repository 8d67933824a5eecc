import assert from "node:assert/strict";
import { violations } from "../axe.mjs";

export const name = "Where the system sets the colours, light or dark, axe finds nothing and the picture stands out from its paper";

export async function run({ page, risewright }) {
  for (const scheme of ["light", "dark"]) {
    await page.emulateMedia({ forcedColors: "active", colorScheme: scheme });
    await risewright.open("#1/elevation/a");
    await risewright.drawn();
    assert.deepEqual(await violations(page), [], scheme);
    assert.deepEqual(await faint(page), [], scheme);
  }
}

/** Lettering and lines of the picture that do not stand out from the paper, by the contrast ratio of WCAG 2.2. */
function faint(page) {
  return page.evaluate(() => {
    const channels = (colour) => (colour.match(/[\d.]+/g) ?? []).map(Number);
    const light = (colour) => {
      const [red, green, blue] = channels(colour).map((part) => {
        const share = part / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const ratio = (one, other) => {
      const [more, less] = [light(one), light(other)].toSorted((a, b) => b - a);
      return (more + 0.05) / (less + 0.05);
    };
    const paper = getComputedStyle(document.querySelector(".sheet")).backgroundColor;
    const texts = [...document.querySelectorAll(".figure .still text, .figure .moving text, .strip text")].filter((text) => text.textContent);
    const lines = [...document.querySelectorAll(".figure .plot-curves path, .figure .moving line.level, .figure .still .axis")];
    const behind = (text) => {
      const tag = text.classList.contains("tagt") ? document.querySelector(".figure .tag") : null;
      return tag ? getComputedStyle(tag).fill : paper;
    };
    const seen = (element) => `${element.getAttribute("class")} “${element.textContent}”`;
    return [
      ...texts.filter((text) => !text.classList.contains("inv") && ratio(getComputedStyle(text).fill, behind(text)) < 4.5).map(seen),
      ...lines.filter((line) => ratio(getComputedStyle(line).stroke, paper) < 3).map(seen),
    ];
  });
}
