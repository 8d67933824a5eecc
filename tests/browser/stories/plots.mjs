import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";

export const name = "A plot is read at a height by mouse and key, as a table, and saved as CSV and SVG";

const number = (text) => Number(text.replace("\u2212", "-").replace(/[\u00a0\u202f]/g, ""));

/** Value of a column of the file at a height, along the straight line between its rows. */
function between(rows, column, height) {
  const at = rows.findIndex((row) => row[0] >= height - 1e-6);
  const [from, to] = [rows[Math.max(at - 1, 0)], rows[at]];
  return to[0] === from[0] ? to[column] : from[column] + ((height - from[0]) / (to[0] - from[0])) * (to[column] - from[column]);
}

async function saved(page, press) {
  const [download] = await Promise.all([page.waitForEvent("download"), press()]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

export async function run({ page, risewright }) {
  await risewright.open();
  const plot = page.locator(".hold.plot").first();
  const box = await plot.boundingBox();
  const before = await page.locator(".figure").boundingBox();
  const deck = await risewright.height();

  // Pointing reads, and neither moves the deck nor shifts anything.
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 4);
  await risewright.drawn();
  const read = page.locator(".probed text");
  assert.ok((await read.allTextContents()).some((text) => /^\d+$/.test(text)), "the height that is read stands at the line");
  const values = await read.allTextContents();
  for (const curve of ["raise", "without friction", "lower"]) assert.ok(values.includes(curve), `${values}`);
  assert.equal(await risewright.height(), deck);
  assert.deepEqual(await page.locator(".figure").boundingBox(), before);

  // A click takes the deck there.
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 4);
  await risewright.drawn();
  assert.ok((await risewright.height()) > deck + 50);
  await page.mouse.move(5, 5);
  await risewright.drawn();
  assert.equal(await read.count(), 0, "away from the plots nothing is read");

  // By key: a range over the plot, told in words; Enter takes the deck there.
  const range = page.getByRole("slider", { name: "Screw force", exact: true });
  await range.focus();
  await range.press("Home");
  await risewright.drawn();
  assert.match(await range.getAttribute("aria-valuetext"), /^deck 520\smm: raise \d\.\d\d, without friction \d\.\d\d, lower \d\.\d\d kN$/);
  await range.press("Enter");
  assert.equal(await risewright.height(), 520);

  // The table, and the files behind it.
  await page.getByText("Plots, tables").click();
  await page.getByRole("button", { name: "Screw force: table" }).click();
  const window = page.getByRole("dialog");
  await window.waitFor();
  const lines = await window.locator("tbody tr").evaluateAll((rows) =>
    rows.map((row) => [...row.children].map((cell) => cell.textContent)),
  );
  assert.ok(lines.length >= 20 && lines.length <= 40, `${lines.length} lines`);
  const csv = await saved(page, () => window.getByRole("button", { name: "Save as CSV" }).click());
  assert.equal(csv.name, "paper-stack-lift-screw-force.csv");
  const [head, ...rows] = csv.text.trimEnd().split("\r\n").map((line) => line.split(","));
  assert.equal(head[1], "raise (kN)");
  const figures = rows.map((row) => row.map(Number));
  for (const line of lines) {
    const [height, ...shown] = line.map(number);
    shown.forEach((value, column) => {
      const wanted = between(figures, column + 1, height);
      assert.ok(Math.abs(value - wanted) <= 0.0051 + 1e-6, `${head[column + 1]} at ${height}: ${value} shown, ${wanted} saved`);
    });
  }
  const svg = await saved(page, () => window.getByRole("button", { name: "Save as SVG" }).click());
  assert.equal(svg.name, "paper-stack-lift-screw-force.svg");
  assert.match(svg.text, /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"[^>]*>.*<\/svg>\s*$/s);
  assert.ok(svg.text.match(/<text /g).length > 8 && !svg.text.includes("var("), "true lettering, and no variables of the page");
  await page.keyboard.press("Escape");
  assert.equal(await window.count(), 0);

  // The list stays for the next table; Escape puts it away and leads back to what opened it, and so does a press elsewhere.
  const list = page.locator(".plots");
  const isOpen = () => list.evaluate((details) => details.open);
  assert.ok(await isOpen(), "the window takes the list with it");
  await page.keyboard.press("Escape");
  assert.ok(!(await isOpen()), "Escape leaves the list open");
  assert.equal(await page.evaluate(() => document.activeElement.localName), "summary");
  await page.keyboard.press("Enter");
  assert.ok(await isOpen());

  // More plots than there is room for: it says so, and which ones are drawn.
  const boxes = await list.getByRole("checkbox").all();
  for (const box of boxes) await box.check();
  await list.getByText(/^\d plots have room beside the drawing/).waitFor();
  for (const box of boxes.slice(2)) await box.uncheck();
  assert.equal(await list.getByText(/have room beside the drawing/).count(), 0);

  // In the reader's units, and without opening the table.
  await page.getByRole("group", { name: "Units" }).getByRole("button").nth(1).click();
  assert.ok(!(await isOpen()), "a press elsewhere leaves the list open");
  await list.locator("summary").click();
  const inches = await saved(page, () => page.getByRole("button", { name: "Sag at the load: save as CSV" }).click());
  assert.match(inches.text, /^deck height \(in\),under load \(in\),with play \(in\)/);
}
