import assert from "node:assert/strict";

export const name = "The end elevation sways under a push by mouse and key, beside a worker; a remedy is taken and taken back";
export const alone = true;

// What the worker may take, ms: 24 heights with the best guess, and with the ends of the bands.
const BUDGET = { middle: 150, band: 450 };
// Work behind the page is at these shares once each is known; see core's pages/sway.
const SHARES = { middle: 0.45 / 4, band: 0.45 };
// The main thread is held up for no longer while the worker works, ms.
const LONG_TASK = 50;

const plain = (text) => text.replace(/[\u00a0\u202f]/g, " ");

/** The label of the picture: what one would read off it. */
const told = async (page) => plain(await page.locator(".swaying [role=img]").getAttribute("aria-label"));

export async function run({ page, risewright }) {
  await risewright.open("#1/sway/a");
  const push = page.locator("circle.hold.push");
  const slider = page.getByRole("slider", { name: "Sideways push at the deck" });
  await slider.waitFor();
  await page.locator(".working").waitFor({ state: "detached", timeout: 20_000 });
  const text = plain(await page.locator(".reader").innerText());
  assert.match(text, /At \d+ mm the deck gives 1\.\d to 2\.\d mm to a push of 50 N and rattles by/);
  assert.match(text, /under 4\.\d times the load/);
  assert.match(await told(page), /^Deck at 840 mm\. To 50 N it gives 1\.\d mm, between/);

  // By mouse: the deck follows the pointer, and stays until it is let go.
  const box = await push.boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x + 2, y);
  await page.mouse.down();
  await page.mouse.move(x + 14, y, { steps: 6 });
  await page.mouse.up();
  await page.waitForFunction(() => document.querySelector(".swaying [role=img]").ariaLabel.includes("Pushed to the right"));
  const pushed = Number(await slider.inputValue());
  assert.ok(pushed > 5 && pushed <= 100, `${pushed} N`);
  assert.match(plain(await slider.getAttribute("aria-valuetext")), /^\d+ N to the right$/);
  const moved = await push.boundingBox();
  assert.ok(Math.abs(moved.x - box.x - 12) < 4, `${box.x} to ${moved.x}`);

  // By key, to the other side, and back.
  await slider.focus();
  await page.keyboard.press("Home");
  await page.waitForFunction(() => document.querySelector(".swaying [role=img]").ariaLabel.includes("Pushed to the left with 100"));
  await risewright.button("Let go").click();
  await page.waitForFunction(() => document.querySelector(".swaying [role=img]").ariaLabel.includes("To 50"));

  // The deck by key; the whole picture follows.
  const deck = page.getByRole("slider", { name: "Deck height" });
  await deck.focus();
  await page.keyboard.press("End");
  await page.waitForFunction(() => document.querySelector(".swaying [role=img]").ariaLabel.startsWith("Deck at 1160"));
  await risewright.button("Rattle, twist").click();
  await page.locator(".swaying svg", { hasText: "Twists" }).waitFor();

  // A newer edit abandons the older work; while the worker works at the newer one, a drag is not held up.
  await page.getByRole("button", { name: "Take" }).first().click();
  await risewright.drawn();
  await page.evaluate(() => {
    window.longest = 0;
    new PerformanceObserver((list) => {
      for (const task of list.getEntries()) window.longest = Math.max(window.longest, task.duration);
    }).observe({ type: "longtask" });
  });
  const grip = await page.locator(".swaying circle.hold.deck").boundingBox();
  await page.mouse.move(grip.x + grip.width / 2, grip.y + grip.height / 2);
  await page.mouse.down();
  await page.mouse.move(grip.x + grip.width / 2, grip.y + 160, { steps: 40 });
  await page.mouse.up();
  await page.locator(".working").waitFor({ state: "detached", timeout: 20_000 });
  const longest = await page.evaluate(() => window.longest);
  console.log(`    longest task of the page while the worker worked: ${longest.toFixed(0)} ms`);
  assert.ok(longest <= LONG_TASK, `the page was held up for ${longest} ms`);
  assert.doesNotMatch(plain(await page.locator(".reader").innerText()), /under 4\.\d times the load on it/);
  await page.keyboard.press("Control+z");
  await page.waitForFunction(() => document.querySelector(".reader").innerText.includes("4.8"));

  // The worker's own module by itself: how long the slow figures take.
  const times = await page.evaluate(async (shares) => {
    const url = performance.getEntriesByType("resource").map((entry) => entry.name).find((name) => /worker\.js/.test(name));
    const { default: start, Work } = await import(new URL("work.js", url ?? document.querySelector("script[src]").src));
    await start();
    const measure = () => {
      const work = Work.open("sway", "a");
      const begun = performance.now();
      const times = {};
      for (let more = true; more; ) {
        more = work.advance();
        for (const [name, share] of Object.entries(shares)) {
          if (!(name in times) && work.progress() >= share - 1e-9) times[name] = performance.now() - begun;
        }
      }
      times.all = performance.now() - begun;
      work.free();
      return times;
    };
    measure();
    return measure();
  }, SHARES);
  console.log(`    24 heights ${times.middle.toFixed(0)} ms, with the band ${times.band.toFixed(0)} ms, everything ${times.all.toFixed(0)} ms`);
  for (const [what, most] of Object.entries(BUDGET)) assert.ok(times[what] <= most, `${what}: ${times[what]} ms of ${most}`);
}
