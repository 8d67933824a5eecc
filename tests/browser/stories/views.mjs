import assert from "node:assert/strict";
import { DOCUMENTS } from "../page.mjs";

export const name = "Each view has its own address; Back changes the view and keeps the design; a dead worker is replaced";
export const patience = 180_000;

export async function run({ page, risewright }) {
  await risewright.open();
  assert.equal(page.workers().length, 0, "nothing works in the background before it is needed");
  for (const [word, title] of DOCUMENTS) {
    await risewright.view(title);
    assert.match(await risewright.link(), new RegExp(`^#1/${word}/`));
    assert.equal(await page.locator(".reader h2").count(), 1);
    // A window that is resized, or a phone that is turned, must not look for the picture of the view that was left.
    await page.setViewportSize({ width: 1280, height: 720 });
    await risewright.drawn();
    await page.setViewportSize({ width: 1440, height: 900 });
  }

  // An edit in one view is still there in the view one comes back to.
  await risewright.write("Weight", "71");
  const edited = (await risewright.link()).split("/").slice(2).join("/");
  await page.goBack();
  await page.waitForFunction((word) => location.hash.startsWith(`#1/${word}/`), DOCUMENTS.at(-2)[0]);
  assert.equal((await risewright.link()).split("/").slice(2).join("/"), edited);
  await risewright.read(DOCUMENTS.at(-2)[1]);

  // A link that is opened in the same page does change the design, and Back beyond it brings the old one back.
  await page.evaluate(() => (location.hash = "#1/sources/b"));
  await risewright.read("Sources");
  assert.equal(await page.getByLabel("Name of the design").inputValue(), "Potting bench");
  await page.goBack();
  await page.waitForFunction(() => document.querySelector(".name").value === "Paper-stack lift");
  assert.equal((await risewright.link()).split("/").slice(2).join("/"), edited);

  // Opened anew by its address a view shows without passing by the elevation.
  await risewright.open("#1/sources/b");
  await risewright.read("Sources");
  assert.equal(await page.locator(".figure").count(), 0);

  // On a phone the tabs do not all fit; that of the view is in sight.
  await page.setViewportSize({ width: 390, height: 844 });
  await risewright.open("#1/sources/a");
  await risewright.read("Sources");
  await risewright.drawn();
  const tab = await page.locator(".tabs [aria-current]").boundingBox();
  assert.ok(tab.x >= 0 && tab.x + tab.width <= 390, JSON.stringify(tab));
  await page.setViewportSize({ width: 1440, height: 900 });

  // A worker that says it is dead is ended, and another makes the pages from then on.
  await risewright.done("Sources");
  const [dead] = page.workers();
  const gone = dead.waitForEvent("close");
  // It may be gone before it can answer.
  await dead.evaluate(() => postMessage(["dead", 0, "forced by a test"])).catch(() => {});
  await gone;
  await risewright.view("Hardware");
  await risewright.done("Hardware");
  assert.equal(page.workers().length, 1);
  assert.notEqual(page.workers()[0], dead);
}
