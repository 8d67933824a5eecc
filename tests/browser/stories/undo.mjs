import assert from "node:assert/strict";

export const name = "Undo goes back to the start and redo forward again through the same links; units change no link";

const EDITS = [
  ["Weight", "70"],
  ["Arm, pin to pin", "540"],
  ["Width", "80"],
  ["Crank", "140"],
  ["Layers", "3"],
  ["Thread friction", "0.16"],
  ["Caster height", "80"],
  ["Weight", "71"],
];

export async function run({ page, risewright }) {
  await risewright.open();
  const links = [await risewright.link()];
  for (const [label, text] of EDITS) {
    await risewright.write(label, text);
    links.push(await risewright.link());
  }
  const name = page.getByLabel("Name of the design");
  await name.click();
  await name.fill("");
  await name.pressSequentially("Bench two");
  await name.blur();
  links.push(await risewright.link());
  assert.equal(new Set(links).size, links.length, "every edit changes the link");

  await risewright.button("in (inches)").click();
  assert.equal(await risewright.link(), links.at(-1));

  for (const link of links.slice(0, -1).reverse()) {
    await risewright.button(/^Undo/).click();
    assert.equal(await risewright.link(), link);
  }
  assert.equal(await risewright.button("Undo: nothing").getAttribute("aria-disabled"), "true");
  for (const link of links.slice(1)) {
    await risewright.button(/^Redo/).click();
    assert.equal(await risewright.link(), link);
  }
}
