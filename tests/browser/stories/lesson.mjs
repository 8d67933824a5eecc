import assert from "node:assert/strict";
import { createServer } from "node:http";
import { violations } from "../axe.mjs";
import { PHONE } from "../browser.mjs";
import { RisewrightPage } from "../page.mjs";

export const name = "A lesson is done by mouse, by touch and by keys alone, and within another page that keeps nothing";
export const patience = 180_000;

/** The guesses in words, the highest deck first. */
const guesses = (page) => page.locator(".lesson-guess input").evaluateAll((fields) => fields.map((field) => field.getAttribute("aria-valuetext")));

const forces = async (page) => (await guesses(page)).map((words) => Number(words.match(/: ([\d.]+)\skN/)[1]));

async function begin(page, risewright, fragment = "#1/lesson-bottom") {
  await risewright.open(fragment);
  await page.locator(".reader h2", { hasText: "Why the bottom" }).waitFor();
  await page.locator(".hold.sketch[width]:not([width='0'])").waitFor({ state: "attached" });
}

async function end(page) {
  await page.getByRole("button", { name: "3 Say why" }).click();
  // What the screw puts in comes out, in figures of this design.
  await page.getByText(/\d+\sJ and \d+\sJ/).first().waitFor();
  const [work, lifted] = (await page.locator(".reader").innerText()).match(/(\d+)\sJ and (\d+)\sJ/).slice(1).map(Number);
  assert.ok(work > 0 && Math.abs(work - lifted) <= 1);
  await page.getByRole("button", { name: /^Yes: by/ }).click();
  await page.locator(".reader [aria-pressed=true]", { hasText: "Yes: by" }).waitFor();
}

export async function run({ page, risewright, another, address }) {
  const fresh = async (device) => {
    const context = await another(device);
    const page = await context.newPage();
    return { context, page, risewright: new RisewrightPage(page, address) };
  };
  // By mouse: a line from little at the top to much at the bottom.
  await begin(page, risewright);
  assert.equal(await page.getByRole("complementary", { name: "Inputs" }).count(), 0, "a lesson needs no inputs");
  const pad = await page.locator(".hold.sketch").boundingBox();
  await page.mouse.move(pad.x + 40, pad.y + 10);
  await page.mouse.down();
  for (let step = 0; step <= 30; step += 1) {
    await page.mouse.move(pad.x + pad.width * (0.1 + 0.02 * step), pad.y + 10 + (step / 30) * (pad.height - 20));
    await risewright.drawn();
  }
  await page.mouse.up();
  await risewright.done("Why the bottom");
  const drawn = await forces(page);
  assert.ok(drawn.every((force, at) => at === 0 || force >= drawn[at - 1]), `${drawn}`);
  assert.ok(drawn.at(-1) > drawn[0] + 2, `${drawn}`);
  await page.getByRole("button", { name: "2 See" }).click();
  await page.getByRole("button", { name: "Raise", exact: true }).click();
  await page.getByRole("slider", { name: "Deck height" }).evaluate(async (slider) => {
    while (Number(slider.value) < Number(slider.max) - 1e-6) await new Promise((done) => setTimeout(done, 50));
  });
  const spoken = page.locator(".figure [role=img]");
  assert.match(await spoken.getAttribute("aria-label"), /\d/, "the picture says what one reads off it");
  assert.deepEqual(await violations(page), []);
  await end(page);
  assert.deepEqual(await violations(page), []);

  // The design of the reader has not been touched.
  assert.equal(await page.getByLabel("Name of the design").inputValue(), "Paper-stack lift");

  // By touch.
  const phone = await fresh(PHONE);
  await begin(phone.page, phone.risewright);
  const small = await phone.page.locator(".hold.sketch").boundingBox();
  const session = await phone.context.newCDPSession(phone.page);
  const touch = (type, x, y) => session.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  await touch("touchStart", small.x + 30, small.y + 12);
  for (let step = 0; step <= 12; step += 1) {
    await touch("touchMove", small.x + 30 + step * 14, small.y + 12 + (step / 12) * (small.height - 24));
    await phone.risewright.drawn();
  }
  await touch("touchEnd");
  await phone.risewright.done("Why the bottom");
  const touched = await forces(phone.page);
  assert.ok(touched.at(-1) > touched[0] + 1, `${touched}`);
  await phone.context.close();

  // By keys alone.
  const keys = await fresh();
  await begin(keys.page, keys.risewright);
  const focusOn = async (selector) => {
    for (let press = 0; press < 80; press += 1) {
      await keys.page.keyboard.press("Tab");
      if (await keys.page.evaluate((selector) => document.activeElement.matches(selector), selector)) return;
    }
    throw new Error(`the Tab key never comes to ${selector}`);
  };
  await focusOn(".lesson-guess input");
  for (let press = 0; press < 5; press += 1) await keys.page.keyboard.press("ArrowRight");
  await keys.risewright.done("Why the bottom");
  assert.ok((await forces(keys.page))[0] > 1, "five presses raise the guess");
  assert.equal(await keys.page.evaluate(() => document.activeElement.type), "range", "the focus stays");
  await focusOn("button[value=see]");
  await keys.page.keyboard.press("Enter");
  await keys.page.locator("button[value=see][aria-pressed=true]").waitFor();
  await focusOn("button[value=why]");
  await keys.page.keyboard.press("Enter");
  await keys.page.getByText(/\d+\sJ and \d+\sJ/).first().waitFor();
  await keys.context.close();

  // In a frame of another page, on another port, which lets it keep nothing.
  const host = createServer((_, answer) => {
    answer.setHeader("content-type", "text/html");
    answer.end(`<!doctype html><title>host</title><iframe title="lesson" width="320" height="600" src="${address}#1/lesson-bottom,embed"></iframe>`);
  });
  await new Promise((done) => host.listen(0, "127.0.0.1", done));
  try {
    const guest = await fresh();
    await guest.context.addInitScript(() => {
      for (const name of ["localStorage", "sessionStorage"]) {
        Object.defineProperty(window, name, { get: () => { throw new DOMException("denied", "SecurityError"); } });
      }
    });
    // The host is the test's own.
    await guest.page.goto(`http://127.0.0.1:${host.address().port}/`);
    const frame = guest.page.frameLocator("iframe");
    await frame.locator(".reader h2", { hasText: "Why the bottom" }).waitFor({ timeout: 20_000 });
    assert.equal(await frame.locator("header").count(), 0, "no head within another page");
    await frame.getByRole("link", { name: "Open in Risewright" }).waitFor();
    const wide = await frame.locator("html").evaluate((html) => html.scrollWidth);
    assert.ok(wide <= 320, `${wide} px wide`);
    await guest.context.close();
  } finally {
    host.close();
  }
}
