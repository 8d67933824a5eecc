import assert from "node:assert/strict";
import { solved } from "../native.mjs";

export const name = "The figures on screen are those of the native program for the link in the address bar";

const DESIGNS = [
  async () => {},
  async (risewright) => {
    await risewright.write("Stages", "3");
    await risewright.write("Weight", "45 kg");
  },
  async (risewright) => {
    await risewright.button("Potting bench").click();
    await risewright.button("mm (millimetres)").click();
    await risewright.write("Off the middle", "2 in");
  },
];

export async function run({ page, risewright }) {
  await risewright.open();
  for (const change of DESIGNS) {
    await change(risewright);
    const link = (await risewright.link()).slice(1);
    for (const key of ["Home", "PageUp", "End"]) {
      await risewright.carriage.press(key);
      await risewright.drawn();
      const height = (await risewright.height()) / 1000;
      const [native] = (await solved(link, [height])).results;
      const kn = (newtons) => Math.round(newtons / 10) / 100;
      const where = `${link} at ${height} m`;
      assert.deepEqual(await risewright.values("Screw force"), [native.F_raise, native.F0, native.F_lower].map(kn), where);
      assert.equal(Number(await risewright.reading("raise").textContent()), Math.round(native.crank_force), where);
      assert.deepEqual(await risewright.values("left casters"), [Math.round(native.caster_left)], where);
      // The main value stands beside its curve as well.
      const drawn = await page.locator(".figure .moving text.b").allTextContents();
      assert.ok(drawn.includes(kn(native.F_raise).toFixed(2)), `${where}: ${drawn}`);
    }
  }
}
