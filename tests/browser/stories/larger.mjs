import assert from "node:assert/strict";
import { DESKTOP } from "../browser.mjs";
import { DOCUMENTS } from "../page.mjs";

export const name = "Type twice as large, and a window of 320 px: everything grows, nothing is cut, nothing scrolls sideways";
export const device = DESKTOP;
export const patience = 240_000;

/** The browser's own size of type, as somebody sets it who cannot read small print (16 px by default). */
async function setType(context, page, pixels) {
  const session = await context.newCDPSession(page);
  await session.send("Page.setFontSizes", { fontSizes: { standard: pixels, fixed: pixels } });
}

/** Words that are cut: their box hides what runs over, or reaches beyond the window. */
function cut(page) {
  return page.evaluate(() => {
    const inside = (element) => element.closest(".tabs, .scroll, .figure, .window, .unseen, .spoken, .skip, .gist, input, [hidden], svg");
    const all = [...document.querySelectorAll("#app *")].filter((element) => {
      const own = [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim());
      return own && element.checkVisibility({ visibilityProperty: true }) && !inside(element);
    });
    const wide = document.documentElement.clientWidth;
    return all
      .filter((element) => {
        const box = element.getBoundingClientRect();
        const style = getComputedStyle(element);
        const hides = style.overflowX !== "visible" && element.scrollWidth > element.clientWidth + 1;
        // What only a screen reader hears is clipped on purpose.
        return box.width > 0 && style.clipPath === "none" && (hides || box.right > wide + 1 || box.left < -1);
      })
      .map((element) => `${element.localName}.${element.className} “${element.textContent.trim().slice(0, 50)}”`);
  });
}

async function whole(page, risewright, words) {
  await risewright.drawn();
  const wide = await page.evaluate(() => [document.scrollingElement.scrollWidth, innerWidth]);
  assert.ok(wide[0] <= wide[1], `${words} is ${wide[0]} px wide in a window of ${wide[1]}`);
  assert.deepEqual(await cut(page), [], `${words}: cut`);
}

export async function run({ page, context, risewright }) {
  for (const [type, width, height] of [
    [32, 1440, 900],
    [24, 1280, 720],
    [24, 390, 844],
    [16, 320, 640],
  ]) {
    await page.setViewportSize({ width, height });
    await setType(context, page, type);
    await risewright.open("#1/elevation/a");
    const words = `type of ${type} px in ${width} × ${height}`;
    const grown = await page.locator(".inputs summary h3").first().evaluate((head) => head.getBoundingClientRect().height);
    assert.ok(Math.abs(grown / 20 - type / 16) < 0.05, `${words}: a heading of ${grown} px`);
    await page.locator(".inputs details").evaluateAll((all) => all.forEach((group) => (group.open = true)));
    await whole(page, risewright, `elevation, ${words}`);
    const ends = await risewright.lettering();
    const { width: room } = await risewright.extent();
    assert.ok(ends.length > 10 && ends.every(({ left, right }) => left >= -0.5 && right <= room + 0.5), `lettering, ${words}`);
    // What is dragged stays under the pointer.
    const ring = await risewright.grip("carriage");
    const before = await risewright.height();
    await page.mouse.move(ring.x, ring.y);
    await page.mouse.down();
    await page.mouse.move(ring.x + 8 * (type / 16), ring.y, { steps: 4 });
    await risewright.drawn();
    const now = await risewright.grip("carriage");
    assert.ok(Math.abs(now.x - ring.x - 8 * (type / 16)) < 2, `${words}: the ring went ${now.x - ring.x} px`);
    await page.mouse.up();
    assert.notEqual(await risewright.height(), before);
    for (const [word, title] of DOCUMENTS) {
      await risewright.follow(`#1/${word}/a`);
      await risewright.read(title);
      await whole(page, risewright, `${word}, ${words}`);
    }
  }
}
