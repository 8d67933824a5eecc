import assert from "node:assert/strict";

export const name = "After one visit the page opens without a network";

// A request of the entry page is tried on the network first.
export const expected = [/^no answer: .*ERR_INTERNET_DISCONNECTED/];

export async function run({ page, risewright, context }) {
  await risewright.open();
  await risewright.kept();
  const title = await page.title();
  await context.setOffline(true);
  await risewright.open();
  assert.equal(await page.title(), title);
  assert.equal(await page.evaluate(() => navigator.onLine), false);
}
