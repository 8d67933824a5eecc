import assert from "node:assert/strict";
import { violations } from "../axe.mjs";
import { comeBack, NOISE, onTrial, WORD } from "../trial.mjs";
import { RisewrightPage } from "../page.mjs";

export const name = "Three failures in a row, or a kept design that fails every start, end in a plain page with the design and two ways out";
export const expected = [...NOISE, /^no answer: .*page_bg\.wasm/, /Failed to load resource|could not be loaded|TypeError: Failed to fetch/];

const setTrial = (page, on) =>
  page.evaluate(([word, on]) => (on ? sessionStorage.setItem(word, "1") : sessionStorage.removeItem(word)), [WORD, on]);

export async function run({ page, context, another }) {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await onTrial(page, async (risewright, fail, address) => {
    const safe = page.getByRole("heading", { name: "Risewright has stopped" });
    await risewright.open();
    await risewright.write("Weight", "61");
    await page.getByLabel("Name of the design").fill("Odd one");
    const link = await risewright.link();
    for (const kind of ["handler", "effect"]) {
      await fail(kind);
      await comeBack(page);
    }
    await fail("trap");
    await safe.waitFor();
    assert.equal(await page.locator(".page").count(), 0, "nothing of the program runs");

    // What it says, offers and looks like.
    const field = page.getByLabel("Your design, as a link:");
    assert.equal(await field.inputValue(), address + link);
    await page.getByRole("button", { name: "Copy link" }).click();
    await page.getByRole("status").filter({ hasText: "Copied." }).waitFor();
    assert.equal(await page.evaluate(() => navigator.clipboard.readText()), address + link);
    await field.focus();
    assert.equal(await page.evaluate(() => document.activeElement.selectionEnd - document.activeElement.selectionStart), (address + link).length);
    for (const colorScheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme });
      assert.deepEqual(await violations(page), [], colorScheme);
    }
    await page.setViewportSize({ width: 320, height: 640 });
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320);
    await page.setViewportSize({ width: 1440, height: 900 });

    // The design fails every start: trying again leads back here at once.
    await setTrial(page, true);
    const again = page.getByRole("button", { name: "Try again with this design" });
    await page.evaluate(() => (window.old = true));
    await again.click();
    // Another document, not the one that stood there.
    await page.waitForFunction(() => !window.old);
    await safe.waitFor();
    await page.locator("summary").click();
    await page.getByText("asked to fail at the start").waitFor();

    // When it fails no more, it is there again.
    await setTrial(page, false);
    await again.click();
    await risewright.ready();
    assert.equal(await risewright.link(), link);

    // From the first load on nothing but failures: the third leads to the safe start.
    await setTrial(page, true);
    await page.goto("about:blank");
    await page.goto(address);
    await safe.waitFor();
    assert.equal(await field.inputValue(), address + link, "from the browser's storage");
    await setTrial(page, false);
    await page.getByRole("button", { name: "Begin with the first demo" }).click();
    await risewright.ready();
    assert.equal(await page.getByLabel("Name of the design").inputValue(), "Paper-stack lift");
    assert.ok(!(await page.locator(".notice").isVisible()));

    // The design that was left is still kept, and offered where a page begins without a link.
    const other = new RisewrightPage(await context.newPage(), address);
    await other.open();
    await other.button("Open “Odd one”").click();
    assert.equal(await other.link(), link);
    await other.page.close();

    // A program that does not even load, in a profile without a service worker that stands in for the network.
    const fresh = await another();
    try {
      const bare = new RisewrightPage(await fresh.newPage(), address);
      await bare.page.route("**/page_bg.wasm", (route) => route.abort());
      await bare.page.goto(address);
      const notice = bare.page.getByRole("alert").filter({ hasText: "could not be loaded" });
      await notice.waitFor();
      await bare.page.unroute("**/page_bg.wasm");
      await notice.getByRole("button", { name: "Try again" }).click();
      await bare.ready();
      assert.ok(!(await notice.isVisible()));

      // A tab that remembers nothing is not loaded again by itself: it could go on for ever.
      await bare.page.addInitScript(() => {
        Object.defineProperty(window, "sessionStorage", {
          get() {
            throw new DOMException("refused", "SecurityError");
          },
        });
      });
      await bare.open("#1/elevation/b");
      await bare.page.evaluate((word) => window.dispatchEvent(new CustomEvent(word)), WORD);
      await bare.page.getByRole("heading", { name: "Risewright has stopped" }).waitFor();
      await bare.page.getByRole("button", { name: "Try again with this design" }).click();
      await bare.ready();
      assert.equal(await bare.page.getByLabel("Name of the design").inputValue(), "Potting bench");
    } finally {
      await fresh.close();
    }
  });
}
