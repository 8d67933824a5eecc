import assert from "node:assert/strict";
import { plainHost } from "../host.mjs";
import { RisewrightPage } from "../page.mjs";

export const name = "On a plain host below a path the page opens, keeps to its policy without headers, and stays when the host goes";

export const expected = [
  /Executing inline script violates|content policy: script-src-elem inline/, // the attempts below
  /requires 'TrustedScript'|content policy: require-trusted-types-for/,
  /^no answer: .*ERR_CONNECTION_REFUSED/, // the host is gone
];

export async function run({ page }) {
  const host = await plainHost();
  try {
    const risewright = new RisewrightPage(page, host.address);
    await risewright.open();
    const ran = await page.evaluate(() => {
      const attempts = [
        (script) => (script.textContent = "window.inlineRan = true"),
        (script) => script.append("window.inlineRan = true"),
      ];
      for (const attempt of attempts) {
        const script = document.createElement("script");
        try {
          attempt(script);
          document.head.append(script);
        } catch {
          // Refused before it could run.
        }
      }
      return window.inlineRan === true;
    });
    assert.equal(ran, false);
    await risewright.kept();
    // Leaving a page cancels what it still loads, and a cancelled request counts as a failed one.
    await page.waitForLoadState("networkidle");
    host.stop();
    await risewright.open();
  } finally {
    host.stop();
  }
}
