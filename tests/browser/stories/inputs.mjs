import assert from "node:assert/strict";

export const name = "Inputs take what people write, refuse nonsense in place, and the last good drawing stays";

export async function run({ page, risewright }) {
  await risewright.open();
  const arm = "Arm, pin to pin";
  const value = async (label) => (await risewright.input(label)).inputValue();

  await risewright.write("Arm, pin to pin", "24 1/2 in");
  assert.equal(await value(arm), "622.3");
  assert.match(await risewright.link(), /^#1\/elevation\/a\.al/);

  await risewright.write("Width", '3 1/4"');
  assert.equal(await value("Width"), "82.55");
  await risewright.write("Weight", "165 lb");
  assert.equal(await value("Weight"), "74.84274105");

  const good = await risewright.picture();
  const link = await risewright.link();
  for (const nonsense of ["", "banana", "12 kg", "1 1/0", "1e999", "💥", "-5", "99999"]) {
    await risewright.write(arm, nonsense);
    const refusal = await risewright.refusal(arm);
    assert.ok((await refusal.textContent()).length > 10, `“${nonsense}” is refused with a reason`);
    const input = await risewright.input(arm);
    assert.equal(await input.getAttribute("aria-invalid"), "true");
    assert.ok((await input.getAttribute("aria-describedby")).includes(await refusal.getAttribute("id")));
    assert.equal(await risewright.picture(), good, `“${nonsense}” leaves the drawing`);
  }
  assert.equal(await risewright.link(), link);

  // The way out stands on a button.
  await risewright.write("Weight", "9000 t");
  await risewright.write("Weight", "90000 kg");
  await (await risewright.refusal("Weight")).getByRole("button").first().click();
  assert.equal(await value("Weight"), "2000");
  assert.equal(await (await risewright.refusal("Weight")).textContent(), "");

  // 1,200 can be read in two ways, and both are offered.
  await risewright.write("Length", "1,200");
  const offers = (await risewright.refusal("Length")).getByRole("button");
  assert.deepEqual((await offers.allTextContents()).map((text) => text.replace(/\s/g, " ")).length, 2);
  await offers.last().click();
  assert.ok(["1200", "1.2"].includes(await value("Length")));

  // The range and the meaning stand beneath the field that has the focus.
  const lowest = await risewright.input("Lowest deck");
  await lowest.focus();
  const hint = page.locator(`#${await lowest.getAttribute("id")}-hint`);
  assert.match(await hint.textContent(), /mm to \d+\smm/);
  await lowest.blur();
  await hint.waitFor({ state: "hidden" });

  // Escape gives up and shows the value again.
  await lowest.fill("nonsense");
  await lowest.press("Escape");
  assert.equal(await lowest.inputValue(), "520");
}
