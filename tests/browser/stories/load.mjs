import assert from "node:assert/strict";
import { violations } from "../axe.mjs";

export const name = "The page opens without a complaint and axe finds nothing, in light and dark";

export async function run({ page, risewright }) {
  await risewright.open();
  for (const colorScheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme });
    assert.deepEqual(await violations(page), [], colorScheme);
  }
}
