import assert from "node:assert/strict";
import { DOCUMENTS, RisewrightPage } from "../page.mjs";

export const name = "After one visit everything works without a network: a reload, every view, edits, and a new tab without a link";

// A request of the entry page is tried on the network first.
export const expected = [/^no answer: .*ERR_INTERNET_DISCONNECTED/];

export async function run({ page, risewright, context, address }) {
  await risewright.open();
  await risewright.kept();
  const title = await page.title();
  await context.setOffline(true);
  await risewright.open();
  assert.equal(await page.title(), title);
  assert.equal(await page.evaluate(() => navigator.onLine), false);
  await risewright.write("Weight", "61");
  for (const [, view] of DOCUMENTS) await risewright.view(view);
  const link = await risewright.link();
  await page.close();
  const other = new RisewrightPage(await context.newPage(), address);
  await other.open();
  assert.equal((await other.link()).split("/").at(-1), link.split("/").at(-1));
}
