import assert from "node:assert/strict";
import { backAndForth } from "../history.mjs";

export const name = "Fifty mixed edits, undone to the start and redone to the end, pass the same links; units change none of them";
export const patience = 400_000;

const write = (label, text) => ({ what: `${label} ${text}`, act: (risewright) => risewright.write(label, text) });
const choose = (label, words) => ({
  what: `${label}: ${words}`,
  act: async (risewright) => (await risewright.input(label)).selectOption({ label: words }),
});
const turn = (label) => ({ what: label, act: async (risewright) => (await risewright.input(label)).click() });
const start = (demo) => ({ what: `start from ${demo}`, act: (risewright) => risewright.button(demo).click() });
const rename = (words) => ({
  what: `name ${words}`,
  act: async ({ page }) => {
    const name = page.getByLabel("Name of the design");
    await name.click();
    await name.fill(words);
    await name.blur();
  },
});

const EDITS = [
  write("Weight", "70"),
  write("Arm, pin to pin", "540"),
  write("Width", "80"),
  choose("Stock", "Birch plywood 15 mm"),
  write("Crank", "140"),
  turn("X straps on B"),
  write("Thread friction", "0.16"),
  rename("Bench two"),
  write("Caster height", "80"),
  choose("Sort of wood", "softwood"),
  write("Centre from pivots", "180"),
  write("Length", "720 mm"),
  write("Height", "12 in"),
  choose("Screw moves", "side pivots"),
  write("Rolling resistance", "0.03"),
  write("Pivot friction", "0.2"),
  choose("Screw moves", "base carriage"),
  turn("Cheeks on both sides"),
  write("Hole clearance", "0.3"),
  write("Highest deck", "1150"),
  write("Lowest deck", "530"),
  write("Screw length", "780"),
  choose("Thread", "Tr 16 x 4"),
  write("Pace", "25"),
  start("Potting bench"),
  write("Weight", "120 lb"),
  write("Highest deck", "41 1/2 in"),
  write("Crank", "6 in"),
  turn("Cross boards on A"),
  choose("Pins in wood by", "NDS"),
  write("Deck length", "41 in"),
  rename("Käse & <b>Brot</b>"),
  write("Caster wheel", "2 3/4 in"),
  write("Off the middle", "1/2 in"),
  write("Push along", "10 lbf"),
  turn("Cross boards on A"),
  write("Arm, pin to pin", "31 31/64 in"),
  start("Paper-stack lift"),
  write("Weight", "90"),
  turn("X straps on A"),
  write("Stages", "3"),
  write("Deck thickness", "21"),
  write("Deck's left edge", "-110"),
  write("Left casters at", "-120"),
  write("Right casters at", "590"),
  write("Base beams, length", "800"),
  write("Nut backlash", "0.3"),
  write("Bearing friction", "0.03"),
  rename(""),
  write("Weight", "91"),
];

const UNITS = ["in (inches)", "mm (millimetres)"];

export async function run({ risewright }) {
  assert.equal(EDITS.length, 50);
  await risewright.open();
  const links = [await risewright.link()];
  for (const [index, { what, act }] of EDITS.entries()) {
    await act(risewright);
    await risewright.drawn();
    const link = await risewright.link();
    assert.notEqual(link, links.at(-1), `${what} changes the link`);
    links.push(link);
    if (index % 10 === 4) {
      for (const unit of UNITS) {
        await risewright.button(unit).click();
        assert.equal(await risewright.link(), link, `${unit} after ${what} leaves the link`);
      }
    }
  }

  await backAndForth(risewright, links);
  assert.equal(await risewright.button("Redo: nothing").getAttribute("aria-disabled"), "true");
}
