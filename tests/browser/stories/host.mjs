import assert from "node:assert/strict";
import { plainHost } from "../host.mjs";
import { RisewrightPage } from "../page.mjs";

export const name = "On a plain host below a path the page opens, keeps to its policy without headers, and stays when the host goes";

export const expected = [
  /Executing inline script violates|content policy: script-src-elem inline/, // the attempt below
  /^no answer: .*ERR_CONNECTION_REFUSED/, // the host is gone
];

export async function run({ page }) {
  const host = await plainHost();
  try {
    const risewright = new RisewrightPage(page, host.address);
    await risewright.open();
    const inlineScriptRan = await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.inlineRan = true";
      document.head.append(script);
      return window.inlineRan === true;
    });
    assert.equal(inlineScriptRan, false);
    await risewright.kept();
    // Leaving a page cancels what it still loads, and a cancelled request counts as a failed one.
    await page.waitForLoadState("networkidle");
    host.stop();
    await risewright.open();
  } finally {
    host.stop();
  }
}
