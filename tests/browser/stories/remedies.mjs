import assert from "node:assert/strict";

export const name = "What would help is told when the design has rested; until then its room is kept, and nothing of it is said";

export async function run({ page, risewright }) {
  await risewright.open();
  const told = page.locator(".findings .remedy:not(.awaited)");
  const awaited = page.locator(".findings .awaited");
  const height = async () => (await page.locator(".findings ol").boundingBox()).height;

  await risewright.write("Weight", "160 kg");
  await risewright.advised();
  const first = await told.allTextContents();
  assert.ok(first.length >= 2, first.join(" | "));
  assert.match(first[0], /\d.*\.$/);

  // The next edit: what was said before is kept unseen, so that nothing jumps, and then makes room for what is true now.
  await page.evaluate(() => {
    window.seen = [];
    const list = document.querySelector(".findings ol");
    new MutationObserver(() => {
      const waiting = [...list.querySelectorAll(".awaited")];
      const hidden = waiting.every((one) => getComputedStyle(one).visibility === "hidden");
      window.seen.push({ waiting: waiting.length, hidden, height: list.getBoundingClientRect().height });
    }).observe(list, { childList: true, subtree: true });
  });
  const before = await height();
  await risewright.write("Weight", "161 kg");
  await risewright.advised();
  const seen = await page.evaluate(() => window.seen);
  const [between] = seen;
  assert.ok(between.waiting >= 2, JSON.stringify(seen));
  assert.ok(Math.abs(between.height - before) <= 1, `${before} to ${between.height}`);
  assert.ok(seen.every(({ hidden }) => hidden));
  // A kilogram more is another design: one of its findings or its figures differs, and all are told.
  const second = await told.allTextContents();
  assert.ok(second.length >= 2 && second.join() !== first.join(), second.join(" | "));

  // The same design again needs no trying: other units, the same steps.
  await risewright.button(/^in/).first().click();
  assert.equal(await awaited.count(), 0);
  assert.match((await told.allTextContents()).join(" "), / in\b|″|"/);
}
