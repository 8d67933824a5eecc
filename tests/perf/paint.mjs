// The first visit: when something is painted, when the largest thing is, when the deck can be dragged.
import { DESKTOP, PHONE } from "../browser/browser.mjs";
import { heading, tell } from "./table.mjs";

/** 1.6 Mbit/s with 150 ms, as a telephone has it in a shed; processor a quarter. */
const PHONE_MODEL = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const VISITS = 3;

async function visit(browser, address, device, model) {
  const context = await browser.newContext({ ...device, serviceWorkers: "block" });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  if (model) {
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", model);
    await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  }
  await page.addInitScript(() => {
    window.seen = { largest: 0, shift: 0 };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) window.seen.largest = entry.startTime;
    }).observe({ type: "largest-contentful-paint", buffered: true });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.seen.shift += entry.value;
    }).observe({ type: "layout-shift", buffered: true });
  });
  await page.goto(address);
  await page.locator("circle.hold.ring").waitFor({ state: "attached", timeout: 60_000 });
  const ready = await page.evaluate(() => performance.now());
  await page.waitForTimeout(500);
  const paint = await page.evaluate(() => ({
    first: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? Number.NaN,
    ...window.seen,
  }));
  await context.close();
  return { ...paint, ready };
}

export async function paints(browser, address) {
  for (const [words, device, model, aim] of [
    ["First visit, desktop, this machine", DESKTOP, null, ""],
    ["First visit, phone model: 1.6 Mbit/s, 150 ms, processor a quarter", PHONE, PHONE_MODEL, "aim 1800"],
  ]) {
    heading(`${words} (best of ${VISITS})`);
    const visits = [];
    for (let at = 0; at < VISITS; at += 1) visits.push(await visit(browser, address, device, model));
    const best = (name) => Math.min(...visits.map((one) => one[name]));
    tell("first paint", best("first"), "ms");
    tell("largest paint", best("largest"), "ms", aim);
    tell("ready to drag", best("ready"), "ms");
    console.log(`layout shift ${best("shift").toFixed(3)}, aim 0.02`);
  }
}
