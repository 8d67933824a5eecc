import assert from "node:assert/strict";
import { backAndForth } from "../history.mjs";

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

  await backAndForth(risewright, links);
}
