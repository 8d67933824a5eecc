import assert from "node:assert/strict";
import { RisewrightPage } from "../page.mjs";

export const name = "Where storage is refused, full, or cleared under its feet, the page works from memory and says so once";

/** Before anything of the page runs. */
const WAYS = {
  refused: () => {
    for (const storage of ["localStorage", "sessionStorage"]) {
      Object.defineProperty(window, storage, {
        get() {
          throw new DOMException("refused", "SecurityError");
        },
      });
    }
  },
  full: () => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  },
};
const SAYS = { refused: "This browser keeps nothing", full: "The browser's storage is full" };

async function works(page, risewright, words) {
  const notice = page.locator(".notice");
  await notice.filter({ hasText: words }).waitFor();
  assert.equal((await notice.textContent()).split(words).length, 2, "once");
  await risewright.button("Close").click();
  const first = await risewright.link();
  await risewright.write("Weight", "61");
  const link = await risewright.link();
  assert.notEqual(link, first);
  await page.waitForTimeout(600);
  await risewright.write("Weight", "62");
  await risewright.link();
  assert.ok(!(await notice.isVisible()), "not said again");
  await risewright.button(/^Undo/).click();
  assert.equal(await risewright.link(), link);
  // The address holds the design all the same.
  await page.reload();
  await risewright.ready();
  assert.equal(await risewright.link(), link);
}

export async function run({ page, risewright, another, address }) {
  for (const [way, block] of Object.entries(WAYS)) {
    const context = await another();
    try {
      const blocked = await context.newPage();
      await blocked.addInitScript(block);
      const there = new RisewrightPage(blocked, address);
      await there.open();
      await works(blocked, there, SAYS[way]);
      await there.view("Strength");
    } finally {
      await context.close();
    }
  }

  await risewright.open();
  await risewright.write("Weight", "61");
  await risewright.link();
  await page.evaluate(() => localStorage.clear());
  await page.waitForTimeout(600);
  await risewright.write("Weight", "62");
  const link = await risewright.link();
  const notice = page.locator(".notice");
  await notice.filter({ hasText: "was cleared while it was open" }).waitFor();
  await risewright.button("Close").click();
  await page.waitForTimeout(600);
  await risewright.write("Weight", "61");
  await risewright.write("Weight", "62");
  await risewright.link();
  assert.ok(!(await notice.isVisible()));

  // It is kept again: a page without a link brings it.
  await page.goto("about:blank");
  await page.goto(address);
  await risewright.ready();
  assert.equal(await risewright.link(), link);
}
