import assert from "node:assert/strict";

export const name = "What would help is told when the design has rested; until then its room is kept, and nothing of it is said";

export async function run({ page, risewright }) {
  await risewright.open();
  const told = page.locator(".findings .remedy:not(.awaited)");
  const awaited = page.locator(".findings .awaited");
  /** Until nothing new has been told for a while; what is tried for the first time keeps no room before. */
  const settle = async () => {
    for (let words = "", last = null; words === "" || words !== last; ) {
      last = words;
      await page.waitForTimeout(400);
      words = (await awaited.count()) ? "" : (await told.allTextContents()).join("\n");
    }
  };
  const height = async () => (await page.locator(".findings ol").boundingBox()).height;

  await risewright.write("Weight", "160 kg");
  await settle();
  const first = await told.allTextContents();
  assert.ok(first.length >= 2, first.join(" | "));
  assert.match(first[0], /\d.*\.$/);

  // The next edit: what was said before is kept unseen, so that nothing jumps, and then makes room for what is true now.
  await page.evaluate(() => {
    window.seen = [];
    new MutationObserver(() => {
      const waiting = document.querySelectorAll(".findings .awaited");
      window.seen.push([waiting.length, [...waiting].every((one) => getComputedStyle(one).visibility === "hidden")]);
    }).observe(document.querySelector(".findings ol"), { childList: true, subtree: true });
  });
  const before = await height();
  await risewright.write("Weight", "161 kg");
  const between = (await awaited.count()) ? await height() : before;
  await settle();
  assert.ok(Math.abs(between - before) <= 1, `${before} to ${between}`);
  const seen = await page.evaluate(() => window.seen);
  assert.ok(seen.some(([count]) => count >= 2), JSON.stringify(seen));
  assert.ok(seen.every(([, hidden]) => hidden));
  // A kilogram more is another design: one of its findings or its figures differs, and all are told.
  const second = await told.allTextContents();
  assert.ok(second.length >= 2 && second.join() !== first.join(), second.join(" | "));

  // The same design again needs no trying: other units, the same steps.
  await risewright.button(/^in/).first().click();
  assert.equal(await awaited.count(), 0);
  assert.match((await told.allTextContents()).join(" "), / in\b|″|"/);
}
