import assert from "node:assert/strict";

export const name = "A torn copy of the kept design is left out and told once; without any the demo stands there";

const slots = (page, tear) =>
  page.evaluate((tear) => {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith("risewright.design."));
    const newest = keys.sort((one, other) => parseInt(localStorage[other]) - parseInt(localStorage[one]));
    for (const key of newest.slice(0, tear)) localStorage[key] = localStorage[key].slice(0, -1);
    return keys.length;
  }, tear);

export async function run({ page, risewright, address }) {
  const nameField = page.getByLabel("Name of the design");
  const reopen = async (tear) => {
    assert.equal(await slots(page, tear), 2);
    await page.goto("about:blank");
    await page.goto(address);
    await risewright.ready();
  };
  await risewright.open();
  for (const text of ["61", "62", "63"]) {
    await risewright.write("Weight", text);
    await risewright.link();
  }
  await reopen(1);
  await page.getByText("One of the two kept copies could not be read and was left out; the other is shown.").waitFor();
  const weight = Number.parseFloat(await (await risewright.input("Weight")).inputValue());
  assert.equal(weight, 62, "the copy before the last");

  await reopen(0);
  assert.ok(!(await page.locator(".notice").isVisible()), "told once");

  await nameField.fill("Lost");
  await risewright.link();
  await reopen(2);
  await page.getByText("The kept copies could not be read and were left out; the first demo is shown.").waitFor();
  assert.equal(await nameField.inputValue(), "Paper-stack lift");
  await risewright.link();
  await reopen(0);
  assert.ok(!(await page.locator(".notice").isVisible()));
}
