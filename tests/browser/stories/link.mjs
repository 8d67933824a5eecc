import assert from "node:assert/strict";
import { RisewrightPage } from "../page.mjs";

export const name = "A link opens the same picture in a fresh profile; a broken one says so and changes nothing";

export async function run({ page, risewright, context, another, address }) {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  await risewright.open();
  await page.getByLabel("Name of the design").fill("Käse & <b>Brot</b>");
  await risewright.write("Weight", "65 kg");
  await risewright.write("Arm, pin to pin", "540");
  await risewright.carriage.press("End");
  await risewright.drawn();
  await risewright.button("Copy link").click();
  await risewright.button("Copied").waitFor();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  // Of the same design, with the deck where it stands.
  assert.match(copied, /#1\/elevation,at\w+\//);
  assert.equal(copied.replace(/,at\w+/, ""), address + (await risewright.link()));
  assert.ok(copied.length < 400 + address.length);

  const fresh = await another();
  try {
    const other = new RisewrightPage(await fresh.newPage(), address);
    await other.open(new URL(copied).hash);
    await other.carriage.press("End");
    await other.drawn();
    assert.equal(await other.picture(), await risewright.picture());
    assert.equal(await other.page.getByLabel("Name of the design").inputValue(), "Käse & <b>Brot</b>");
  } finally {
    await fresh.close();
  }

  // Without a link the kept design comes back.
  await page.goto("about:blank");
  await risewright.open();
  assert.equal(await page.getByLabel("Name of the design").inputValue(), "Käse & <b>Brot</b>");

  // Broken, newer, impossible: each says so, and the design stays.
  const kept = await risewright.link();
  const picture = await risewright.picture();
  for (const [broken, words] of [
    ["#1/elevation/a.al", "damaged"],
    ["#1/elevation/a.zz11", "does not know"],
    ["#2/elevation/a", "newer"],
    ["#1/elevation/a.al-5", "cannot be built"],
    [`#${"x".repeat(9000)}`, "longer"],
  ]) {
    await page.evaluate((hash) => (location.hash = hash), broken);
    const notice = page.locator(".notice");
    await notice.filter({ hasText: words }).waitFor();
    assert.equal(await risewright.picture(), picture, broken);
    assert.equal(await risewright.link(), kept, broken);
  }
  await page.getByRole("button", { name: "Close" }).click();
  assert.ok(!(await page.locator(".notice").isVisible()));
}
