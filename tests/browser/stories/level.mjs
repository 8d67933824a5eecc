import assert from "node:assert/strict";
import { DESKTOP, LAPTOP, PHONE } from "../browser.mjs";

export const name = "The level line meets the deck's surface and the curves within a pixel, at every height and size";

/** Places in the picture, CSS pixels: the level line, the deck's top edge, and how far the main curve's dot is from its curve. */
function places() {
  const figure = document.querySelector(".figure svg");
  const origin = figure.getBoundingClientRect();
  const level = Number(document.querySelector(".figure .moving line.level").getAttribute("y1"));
  const grip = document.querySelector(".figure circle.hold.deck").getBoundingClientRect();
  const deck = grip.top + grip.height / 2 - origin.top;
  const dots = [...document.querySelectorAll(".figure .moving .d-force")].map((dot) => {
    const box = dot.getBBox();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  });
  const curves = [...document.querySelectorAll(".figure .plot-curves .c-raise")];
  const away = dots.map((dot) =>
    Math.min(
      ...curves.map((curve) => {
        const length = curve.getTotalLength();
        let best = Infinity;
        for (let at = 0; at <= length; at += 0.25) {
          const point = curve.getPointAtLength(at);
          best = Math.min(best, Math.hypot(point.x - dot.x, point.y - dot.y));
        }
        return best;
      }),
    ),
  );
  return { level, deck, dots: dots.map((dot) => dot.y), away };
}

export async function run({ page, risewright }) {
  for (const { viewport } of [DESKTOP, LAPTOP, PHONE]) {
    await page.setViewportSize(viewport);
    await risewright.open();
    for (const key of ["Home", "PageUp", "PageUp", "ArrowUp", "PageUp", "End"]) {
      await risewright.carriage.press(key);
      await risewright.drawn();
      const { level, deck, dots, away } = await page.evaluate(places);
      const where = `${viewport.width} px, ${await risewright.height()} mm`;
      if (viewport.width >= 900) {
        assert.ok(Math.abs(level - deck) <= 1, `${where}: level ${level}, deck ${deck}`);
        assert.ok(dots.every((y) => Math.abs(y - level) <= 1), `${where}: level ${level}, dots ${dots}`);
      }
      assert.ok(away.length > 0 && away.every((far) => far <= 1), `${where}: ${away} px from the curve`);
    }
  }
}
