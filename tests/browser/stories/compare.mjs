import assert from "node:assert/strict";

export const name = "A design set aside lies under the present one in the elevation and its plots, and a table says what differs";

export async function run({ page, risewright }) {
  await risewright.open("#1/compare/a");
  await risewright.read("compared");
  await risewright.button("Set the present design aside").click();
  await page.getByText("they are one table").waitFor();
  await risewright.write("Arm, pin to pin", "600");
  const inputs = page.locator("table", { hasText: "Inputs in which the two differ" });
  await inputs.waitFor();
  assert.match(await inputs.innerText(), /Arm, pin to pin\s+520\smm\s+600\smm/);
  const results = page.locator("table", { hasText: "Hardest crank" });
  assert.match(await results.innerText(), /set aside\s+now\s+change\s+now it is/);
  assert.match(await results.innerText(), /[+−]\d+(\.\d+)?\s?%/);
  assert.ok((await page.locator(".reader figure svg").count()) >= 8, "elevations and plots");

  await page.getByRole("link", { name: "Elevation" }).click();
  await page.locator(".figure .moving").waitFor({ state: "attached" });
  await risewright.drawn();
  const over = await page.locator(".figure .moving").innerHTML();
  assert.match(over, /set aside: Paper-stack lift, at the same deck height/);

  await risewright.view("Compare");
  await risewright.button("Stop comparing").click();
  await page.getByText("No design stands beside this one yet").waitFor();
  await page.getByRole("link", { name: "Elevation" }).click();
  await page.locator(".figure .moving").waitFor({ state: "attached" });
  await risewright.drawn();
  assert.doesNotMatch(await page.locator(".figure .moving").innerHTML(), /at the same deck height/);
}
