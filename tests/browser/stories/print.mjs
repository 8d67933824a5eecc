import assert from "node:assert/strict";
import { outlines } from "../pdf.mjs";

export const name = "The elevation prints on one page, A4 or Letter, true to the scale it states";

const MILLIMETRE = 72 / 25.4; // points: ISO 32000-1, default user space

/** The two demos as they are for ever: fragment, units, length of the bar and of the base on the table itself, mm, and standard scales. */
const DESIGNS = [
  { fragment: "#1/elevation/a", units: "mm", bar: 100, base: 780, scales: [1, 2, 5, 10, 20, 50, 100] },
  { fragment: "#1/elevation/b", units: "in", bar: 4 * 25.4, base: 38 * 25.4, scales: [1, 2, 4, 8, 12, 16, 24, 32, 48, 96] },
];

const pagesOf = (file) => file.toString("latin1").match(/\/Type\s*\/Page\b/g).length;

/** A tenth of a millimetre: less than a line is wide. */
const near = (width, wanted) => Math.abs(width / MILLIMETRE - wanted) < 0.1;

export async function run({ page, risewright }) {
  // Overloaded, with a score of findings, it still is one page.
  await risewright.open("#1/elevation/a");
  await risewright.write("Weight", "320 kg");
  assert.ok((await page.locator(".findings li.over").count()) >= 10);
  for (const format of ["A4", "Letter"]) {
    const file = await page.pdf({ format, preferCSSPageSize: true, printBackground: true });
    assert.equal(pagesOf(file), 1, `overloaded, on ${format}`);
  }
  for (const { fragment, units, bar, base, scales } of DESIGNS) {
    await risewright.open(fragment);
    await page.getByRole("group", { name: "Units" }).getByRole("button").nth(units === "mm" ? 0 : 1).click();
    for (const format of ["A4", "Letter"]) {
      const where = `${fragment} on ${format}`;
      const file = await page.pdf({ format, preferCSSPageSize: true, printBackground: true });
      assert.equal(pagesOf(file), 1, where);

      // The browser's own view of the sheet tells what it states; the file, how large it came out.
      await page.emulateMedia({ media: "print" });
      await page.setViewportSize(format === "A4" ? { width: 718, height: 1047 } : { width: 740, height: 980 });
      const sheet = page.locator(".wall:visible");
      await sheet.waitFor();
      assert.equal(await sheet.count(), 1, where);
      const text = await sheet.innerText();
      assert.match(text, new RegExp(`Highest deck, \\d+\\s${units}\n`), `${where}: not in ${units}`);
      const ratio = Number(text.match(/Scale\s+1:(\d+)/)[1]);
      assert.ok(scales.includes(ratio), `${where}: 1:${ratio} is no standard scale`);
      for (const part of ["Key figures", "Findings", "Before you raise it", "This design as a link", fragment, "Highest deck", "Lowest deck"]) {
        assert.ok(text.includes(part), `${where}: ${part} is missing`);
      }
      const link = await sheet.locator(".wall-link").evaluate((line) => line.scrollWidth <= line.clientWidth);
      assert.ok(link, `${where}: the link is cut off`);
      await page.emulateMedia({ media: null });
      await page.setViewportSize({ width: 1440, height: 900 });

      const drawn = outlines(file);
      assert.ok(drawn.some(({ width, height }) => near(width, bar) && height < 4 * MILLIMETRE), `${where}: no bar of ${bar} mm`);
      const wanted = base / ratio;
      assert.ok(drawn.some(({ width, height }) => near(width, wanted) && height > 0), `${where}: no base of ${wanted.toFixed(2)} mm at 1:${ratio}`);
    }
  }
}
