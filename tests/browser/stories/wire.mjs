import assert from "node:assert/strict";
import { firstLoadBudget } from "../budget.mjs";

export const name = "The first load stays within the budget of bytes over the wire, all of it compressed";

export async function run({ page, risewright, context }) {
  const session = await context.newCDPSession(page);
  await session.send("Network.enable");
  const answers = new Map();
  session.on("Network.responseReceived", ({ requestId, response }) => {
    if (response.url.startsWith(risewright.address)) answers.set(requestId, { url: response.url, headers: response.headers });
  });
  session.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
    if (answers.has(requestId)) answers.get(requestId).bytes = encodedDataLength;
  });
  await risewright.open();
  await page.waitForLoadState("networkidle");
  const loaded = [...answers.values()].filter((answer) => answer.bytes > 0);
  assert.ok(loaded.length >= 5, `only ${loaded.length} answers seen`);
  for (const { url, headers } of loaded) assert.equal(headers["content-encoding"], "br", url);
  const total = loaded.reduce((sum, { bytes }) => sum + bytes, 0);
  console.log(`    ${(total / 1000).toFixed(1)} kB over the wire, headers included, of ${firstLoadBudget / 1000} kB`);
  assert.ok(total <= firstLoadBudget, `${total} bytes`);
}
