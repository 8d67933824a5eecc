import assert from "node:assert/strict";

export const name = "Raise turns at the crank's pace to the stop; with less motion it steps whole turns";
export const alone = true;

export async function run({ page, risewright }) {
  await risewright.open();
  await risewright.write("Pace", "300");
  await risewright.crank.press("End");
  for (let press = 0; press < 8; press += 1) await risewright.crank.press("PageDown");
  const turns = async () => Number(await risewright.reading("turns").textContent());
  const from = await turns();
  const start = Date.now();
  await risewright.button("Raise").click();
  await page.waitForTimeout(800);
  assert.equal(await risewright.button("Raise").getAttribute("aria-pressed"), "true");
  const pace = ((await turns()) - from) / ((Date.now() - start) / 1000);
  assert.ok(pace > 3.5 && pace < 5.6, `5 turns a second asked for, ${pace.toFixed(1)} seen`);

  await page.locator("button[aria-pressed=false]", { hasText: "Raise" }).waitFor();
  assert.equal(await risewright.height(), 1160);
  assert.match(await page.getByRole("status").textContent(), /^deck 1160\smm, crank \d+\sN, worst at \d\.\d\d of its limit: [a-z].+$/);

  await page.emulateMedia({ reducedMotion: "reduce" });
  const seen = new Set();
  await risewright.button("Lower").click();
  for (let look = 0; look < 30; look += 1) {
    seen.add(await turns());
    await page.waitForTimeout(50);
  }
  await risewright.button("Stop").click();
  assert.ok(seen.size >= 2 && seen.size <= 5, `${[...seen]}`);
  const top = Math.max(...seen);
  assert.ok([...seen].every((turn) => Math.abs((top - turn) % 1) < 0.06 || Math.abs((top - turn) % 1) > 0.94), `${[...seen]}`);
}
