import assert from "node:assert/strict";
import { builtVersion, plainHost } from "../host.mjs";
import { RisewrightPage } from "../page.mjs";

export const name = "A new version is seen at the next visit, and files of two versions never meet";

export const expected = [/^no answer: .*ERR_CONNECTION_REFUSED/];

/** The versions that the page as loaded is made of. */
function versionsLoaded(page) {
  return page.evaluate(() => {
    const folders = performance.getEntriesByType("resource").map(({ name }) => name.match(/\/(\w+)\/[\w.]+$/)?.[1]);
    return [...new Set(folders.filter((folder) => folder && folder !== "where"))];
  });
}

export async function run({ page }) {
  const host = await plainHost();
  try {
    const risewright = new RisewrightPage(page, host.address);
    const first = await builtVersion();
    const second = "0123456789abcdef";
    await risewright.open();
    await risewright.kept();
    assert.deepEqual(await versionsLoaded(page), [first]);

    host.publish(second);
    await risewright.open();
    assert.deepEqual(await versionsLoaded(page), [second]);

    // Leaving a page cancels what it still loads, and a cancelled request counts as a failed one.
    await page.waitForLoadState("networkidle");
    host.stop();
    await risewright.open();
    assert.equal((await versionsLoaded(page)).length, 1);
  } finally {
    host.stop();
  }
}
