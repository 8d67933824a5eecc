import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { RisewrightPage } from "../page.mjs";

export const name = "A design and a whole shelf are saved as files and opened in a fresh profile; broken, foreign and newer files are refused";

const FROZEN = join(import.meta.dirname, "..", "..", "reference", "frozen", "files");

async function saved(page, act) {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

async function bring(page, button, file) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button.click()]);
  await chooser.setFiles(file);
}

const asFile = (name, text) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });

const notice = (page) => page.locator(".notice p").innerText();

export async function run({ page, risewright, another, address }) {
  await risewright.open("#1/shelf/b");
  await risewright.read("Shelf");
  await risewright.button("Put it on the shelf").click();
  await page.locator(".shelf-card").first().waitFor();
  await risewright.write("Weight", "70 kg");
  await risewright.button("Put it on the shelf").click();
  await page.locator(".shelf-card").nth(1).waitFor();

  const design = await saved(page, () => risewright.button("Save as a file").click());
  assert.equal(design.name, "potting-bench-design.json");
  assert.equal(JSON.parse(design.text).inputs.lm.value, 70);
  const shelf = await saved(page, () => risewright.button("Save the whole shelf as a file").click());
  assert.equal(JSON.parse(shelf.text).designs.length, 2);

  // In a fresh profile the same shelf comes of it.
  const context = await another();
  const other = await context.newPage();
  const fresh = { context, page: other, risewright: new RisewrightPage(other, address) };
  await fresh.risewright.open("#1/shelf/a");
  await fresh.risewright.read("Shelf");
  await bring(fresh.page, fresh.risewright.button("Add the designs of a file"), asFile("shelf.json", shelf.text));
  await fresh.page.locator(".shelf-card").nth(1).waitFor();
  const again = await saved(fresh.page, () => fresh.risewright.button("Save the whole shelf as a file").click());
  const sorted = (text) => JSON.parse(text).designs.map((one) => JSON.stringify(one)).toSorted();
  assert.deepEqual(sorted(again.text), sorted(shelf.text));
  assert.match(await notice(fresh.page), /2 designs were put on the shelf/);

  // A design opens at once; what a later version wrote into it is still there when it is saved.
  await bring(fresh.page, fresh.risewright.button("Open a file"), join(FROZEN, "later-members.json"));
  await fresh.page.waitForFunction(() => document.querySelector(".name").value === "From a later version");
  await fresh.risewright.view("Shelf");
  const kept = await saved(fresh.page, () => fresh.risewright.button("Save as a file").click());
  assert.equal(JSON.parse(kept.text).inputs.qq.value, 7);
  assert.ok(JSON.parse(kept.text).author);

  // What is none of ours changes nothing and is named.
  const before = await fresh.risewright.link();
  for (const [text, words] of [
    ["{ broken", /no JSON/],
    ['{"type":"FeatureCollection"}', /not a file of this program/],
    ['{"format":"risewright design","version":9,"name":"x","inputs":{}}', /newer version/],
  ]) {
    await bring(fresh.page, fresh.risewright.button("Open a file"), asFile("x.json", text));
    await fresh.page.locator(".notice p", { hasText: words }).waitFor();
  }
  assert.equal(await fresh.risewright.link(), before);

  // Dropped anywhere on the page.
  await fresh.page.evaluate((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], "dropped.json", { type: "application/json" }));
    for (const type of ["dragover", "drop"]) {
      document.body.dispatchEvent(new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: data }));
    }
  }, design.text);
  await fresh.page.waitForFunction(() => document.querySelector(".name").value === "Potting bench");
  await fresh.context.close();
}
