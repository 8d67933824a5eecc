import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { RisewrightPage } from "../page.mjs";
import { ROOT } from "../server.mjs";

export const name = "Twelve odd tables, four widths, mm and in, two fonts: no lettering meets other lettering or is cut off, the level is one";
export const patience = 600_000;

const { designs } = JSON.parse(readFileSync(join(ROOT, "tests", "reference", "odd_designs.json"), "utf8"));
const WINDOWS = [[1280, 720], [1440, 900], [1920, 1080], [390, 844]];
const FONTS = ["DejaVu Sans", "DejaVu Sans Mono"];
const UNITS = ["mm (millimetres)", "in (inches)"];
/** Its deck tilts as it rises, so that its edge, where the grip is, lies off the level. */
const TILTS = "arm to arm";
/** What the rounding of places to whole hundredths and of glyphs to the raster may take, px. */
const RASTER = 0.5;

const meet = (one, other) =>
  Math.min(one.right, other.right) - Math.max(one.left, other.left) > RASTER &&
  Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > RASTER;

function collisions(texts, { width, height }) {
  const troubles = [];
  texts.forEach((text, index) => {
    if (text.left < -RASTER || text.top < -RASTER || text.right > width + RASTER || text.bottom > height + RASTER) {
      troubles.push(`“${text.words}” is cut off`);
    }
    for (const other of texts.slice(0, index)) if (meet(text, other)) troubles.push(`“${text.words}” meets “${other.words}”`);
  });
  return troubles;
}

/** What must stand on every picture, by the classes of its lettering. */
function missing(texts, raise) {
  const some = (...classes) => texts.filter((text) => classes.every((one) => text.classes.includes(one)));
  const numbers = some("force-t", "b").map((text) => text.words.replace("\u2212", "-"));
  return [
    ["lowest and highest deck", some("dt").filter((text) => !text.classes.includes("live")).length >= 2],
    ["deck now", some("dt", "live").length === 1],
    ["the tag", some("tagt").length >= 1],
    ["the load", some("b", "halo").some((text) => /\d\s(kg|lb|g|oz|t)/.test(text.words))],
    ["the raise value", numbers.some((number) => Number(number) === raise)],
  ].flatMap(([what, stands]) => (stands ? [] : [`${what} is missing`]));
}

function levels({ lines, deck, dots }, narrow, tilts) {
  const near = (y) => lines.some((line) => Math.abs(line - y) <= 1);
  const troubles = dots.filter((y) => !near(y)).map((y) => `a dot at ${y}, level lines at ${lines}`);
  if (!tilts && Math.abs(lines[0] - deck) > 1) troubles.push(`the deck at ${deck}, its level line at ${lines[0]}`);
  if (!narrow && new Set(lines).size !== 1) troubles.push(`level lines at ${lines}`);
  return troubles;
}

export async function run({ context, address }) {
  assert.equal(designs.length, 12);
  const troubles = [];
  for (const font of FONTS) {
    const page = await context.newPage();
    // A sheet made by script: the content policy allows no style in the page.
    await page.addInitScript((font) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(`:root{--font:"${font}",sans-serif!important}`);
      document.adoptedStyleSheets = [sheet];
    }, font);
    const risewright = new RisewrightPage(page, address);
    for (const { name: design, link } of designs) {
      await risewright.open(`#1/elevation/${link}`);
      for (const [width, height] of WINDOWS) {
        await page.setViewportSize({ width, height });
        for (const unit of UNITS) {
          await risewright.button(unit).click();
          for (const keys of [["Home"], ["PageUp"], ["End"]]) {
            for (const key of keys) await risewright.carriage.press(key);
            await risewright.drawn();
            const texts = await risewright.lettering();
            const [raise] = await risewright.values("Screw force");
            const found = [
              ...collisions(texts, await risewright.extent()),
              ...missing(texts, raise),
              ...levels(await risewright.levels(), width < 900, design === TILTS),
            ];
            troubles.push(...found.map((trouble) => `${design}, ${width} px, ${unit}, ${font}, ${keys}: ${trouble}`));
          }
        }
      }
    }
    await page.close();
  }
  assert.equal(troubles.length, 0, `${troubles.length} times\n${troubles.slice(0, 40).join("\n")}`);
}
