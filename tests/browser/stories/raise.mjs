import assert from "node:assert/strict";

export const name = "Raise turns at the crank's pace to the stop; with less motion it steps whole turns";
export const alone = true;

/** A frame that comes later than this, ms, turns the crank no further than one that comes then: see the page's clock. */
const LONGEST = 100;

export async function run({ page, risewright }) {
  await risewright.open();
  await risewright.write("Pace", "300");
  await risewright.crank.press("End");
  for (let press = 0; press < 8; press += 1) await risewright.crank.press("PageDown");
  await note(page);
  await risewright.button("Raise").click();
  await page.waitForFunction(() => window.changes.length && !window.changes.at(-1).pressed);
  // The last change ends at the stop, in the middle of a frame.
  const raised = (await page.evaluate(() => window.changes)).filter(({ pressed }) => pressed);
  assert.ok(raised.at(-1).turns - raised[0].turns > 5, "the button stays pressed until the stop");
  const seconds = raised.slice(1).reduce((sum, { at }, before) => sum + Math.min(at - raised[before].at, LONGEST) / 1000, 0);
  const pace = (raised.at(-1).turns - raised[0].turns) / seconds;
  assert.ok(pace > 4.5 && pace < 5.5, `5 turns a second asked for, ${pace.toFixed(1)} seen`);

  await page.locator("button[aria-pressed=false]", { hasText: "Raise" }).waitFor();
  assert.equal(await risewright.height(), 1160);
  assert.match(await page.getByRole("status").textContent(), /^deck 1160\smm, crank \d+\sN, worst at \d\.\d\d of its limit: [a-z].+$/);

  await page.emulateMedia({ reducedMotion: "reduce" });
  await note(page);
  await risewright.button("Lower").click();
  await page.waitForFunction(() => window.changes.length >= 4);
  await risewright.button("Stop").click();
  const steps = await page.evaluate(() => window.changes);
  const words = JSON.stringify(steps);
  for (const [before, { turns }] of steps.slice(1).entries()) {
    // A frame that comes late may hold two steps.
    const by = steps[before].turns - turns;
    assert.ok(by > 0.9 && Math.abs(by - Math.round(by)) < 0.06, words);
  }
  const strokes = (steps.at(-1).at - steps[0].at) / Math.round(steps[0].turns - steps.at(-1).turns);
  assert.ok(strokes > 500 - LONGEST / 3, `a turn in ${strokes} ms, two a second asked for: ${words}`);
}

/** Notes every change of the reading of turns and of Raise from now on: the time, ms, by the clock by which the page turns, and what both say. */
async function note(page) {
  await page.evaluate(() => {
    window.noting?.disconnect();
    window.changes = [];
    const reading = document.querySelector("[data-reading=turns]");
    const raise = [...document.querySelectorAll(".turning button")].find((button) => button.textContent.includes("Raise"));
    window.noting = new MutationObserver(() => {
      window.changes.push({ at: Date.now(), turns: Number(reading.textContent), pressed: raise.ariaPressed === "true" });
    });
    window.noting.observe(reading, { childList: true, characterData: true, subtree: true });
    window.noting.observe(raise, { attributeFilter: ["aria-pressed"] });
  });
}
