import assert from "node:assert/strict";
import { RisewrightPage } from "../page.mjs";

export const name = "Two tabs on one shelf see each other and lose nothing; torn entries stay, a full and a refused storage are said";

const ENTRY = "risewright.shelf.";

const entries = (page) => page.evaluate((prefix) => Object.keys(localStorage).filter((key) => key.startsWith(prefix)).length, ENTRY);

/** The names on the shelf, in the order of the page. */
const names = (page) => page.locator(".shelf-card input").evaluateAll((fields) => fields.map((field) => field.value));

async function stand(page, wanted) {
  await page.waitForFunction(
    (wanted) => {
      const names = [...document.querySelectorAll(".shelf-card input")].map((field) => field.value);
      return names.toSorted().join() === wanted;
    },
    wanted.toSorted().join(),
  );
}

async function put(risewright, name) {
  await risewright.page.getByLabel("Name of the design").fill(name);
  await risewright.page.getByLabel("Name of the design").blur();
  await risewright.page.locator(".shelf-present h2, .shelf-present h3", { hasText: name }).waitFor();
  await risewright.button("Put it on the shelf").click();
}

const card = (page, at) => page.locator(".shelf-card").nth(at);

export async function run({ page, risewright: one, context, another, address }) {
  await one.open("#1/shelf/a");
  await one.read("Shelf");
  const two = new RisewrightPage(await context.newPage(), address);
  await two.open("#1/shelf/a");
  await two.read("Shelf");

  await put(one, "From one");
  await put(two, "From two");
  for (const tab of [one, two]) await stand(tab.page, ["From one", "From two"]);
  // The same design again stays one.
  await two.button("Put it on the shelf").click();
  await card(page, 0).getByRole("button", { name: "Duplicate" }).click();
  for (const tab of [one, two]) await stand(tab.page, ["From one", "From two", "From two, copy"]);
  assert.equal(await entries(page), 3);

  // Renamed in one tab while the other takes another off.
  const first = (await names(page)).indexOf("From one");
  await card(page, first).getByRole("textbox").fill("Renamed");
  await card(page, first).getByRole("textbox").press("Enter");
  await stand(two.page, ["Renamed", "From two", "From two, copy"]);
  const copy = (await names(two.page)).indexOf("From two, copy");
  await card(two.page, copy).getByRole("button", { name: "Take off" }).click();
  await stand(page, ["Renamed", "From two"]);
  await two.page.locator(".notice").getByRole("button", { name: /back/ }).click();
  await stand(page, ["Renamed", "From two", "From two, copy"]);

  // A torn and a foreign entry are said, not shown, and left where they are.
  await two.page.evaluate((prefix) => {
    const [key] = Object.keys(localStorage).filter((key) => key.startsWith(prefix) && localStorage[key].includes("Renamed"));
    localStorage[key] = localStorage[key].slice(0, -1) + "!";
    localStorage[`${prefix}x`] = "hello";
  }, ENTRY);
  await stand(page, ["From two", "From two, copy"]);
  await page.getByText("2 entries of the shelf cannot be read; they are left where they are.").waitFor();
  await put(one, "After");
  await stand(two.page, ["After", "From two", "From two, copy"]);
  assert.equal(await entries(page), 5);

  // Full: it says so, and nothing is lost.
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
  });
  await put(one, "Too many");
  await page.locator(".notice", { hasText: "no room on the shelf for “Too many”" }).waitFor();
  await stand(page, ["After", "From two", "From two, copy"]);
  await two.page.close();

  // Refused: it works while the page is open, and says so.
  const fresh = await another();
  try {
    const bare = new RisewrightPage(await fresh.newPage(), address);
    await bare.page.addInitScript(() => {
      Object.defineProperty(window, "localStorage", {
        get() {
          throw new DOMException("refused", "SecurityError");
        },
      });
    });
    await bare.open("#1/shelf/a");
    await bare.read("Shelf");
    await bare.page.getByText("the shelf is gone when you close it").waitFor();
    await put(bare, "Passing");
    await stand(bare.page, ["Passing"]);
    await card(bare.page, 0).getByRole("button", { name: "Take off" }).click();
    await stand(bare.page, []);
  } finally {
    await fresh.close();
  }
}
