import assert from "node:assert/strict";
import { RisewrightPage } from "../page.mjs";

export const name = "Two tabs never lose each other's design: the newest is shown, the other offered, and clearing in one does not empty the other";

const nameOf = (tab) => tab.page.getByLabel("Name of the design");

async function named(tab, text) {
  await nameOf(tab).fill(text);
  await tab.link();
  // What follows within half a second is written later.
  await tab.pass(600);
}

export async function run({ page, risewright: one, context, address }) {
  const open = async () => {
    const tab = new RisewrightPage(await context.newPage(), address);
    await tab.open();
    return tab;
  };
  await one.open();
  await named(one, "Early");
  // A second tab begins with the newest design and goes its own way.
  const two = await open();
  assert.equal(await nameOf(two).inputValue(), "Early");
  assert.ok(!(await two.page.locator(".notice").isVisible()));
  await named(two, "Second");
  await named(one, "First");
  for (const weight of ["61", "62", "63"]) {
    await two.write("Weight", weight);
    await two.link();
    await two.pass(600);
  }
  await named(one, "First again");
  assert.equal(await nameOf(two).inputValue(), "Second", "no tab changes another that is open");
  const links = [await one.link(), await two.link()];
  await two.page.close();

  const three = await open();
  assert.equal(await three.link(), links[0], "the newest");
  const notice = three.page.locator(".notice");
  await three.button("Open “Second”").click();
  assert.equal(await three.link(), links[1]);
  assert.ok(!(await notice.isVisible()));
  await three.button(/^Undo/).click();
  assert.equal(await three.link(), links[0]);
  await three.page.close();

  // What was put away is not offered again, but stays.
  const four = await open();
  await four.button("Open “Second”").waitFor();
  await four.button("Close").click();
  await four.page.close();
  const five = await open();
  assert.ok(!(await five.page.locator(".notice").isVisible()));

  // Another tab clears everything: what is open is kept again at once.
  await five.page.evaluate(() => localStorage.clear());
  await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.startsWith("risewright.design.")));
  await page.close();
  await five.page.close();
  const six = await open();
  assert.equal(await six.link(), links[0]);
}
