// Lighthouse's four categories, as it judges a phone by default.
import lighthouse from "lighthouse";
import { launch } from "chrome-launcher";
import { heading, tell } from "./table.mjs";

const AIMS = { performance: 95, accessibility: 100, "best-practices": 100, seo: 0 };
/** Swings with the machine: what it takes on this one times four is held against fixed limits. */
const SWINGS = "performance";

export async function judged(address) {
  heading("Lighthouse, phone");
  const chrome = await launch({
    chromePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    chromeFlags: ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
  });
  try {
    const { lhr } = await lighthouse(address, { port: chrome.port, output: "json", logLevel: "error" });
    let met = true;
    for (const [name, aim] of Object.entries(AIMS)) {
      const score = Math.round(100 * (lhr.categories[name]?.score ?? 0));
      tell(name, score, "", aim ? `aim ${aim}` : "");
      met &&= score >= aim || name === SWINGS;
      const failed = lhr.categories[name].auditRefs.filter(({ id, weight }) => weight > 0 && (lhr.audits[id].score ?? 1) < 0.9);
      for (const { id } of failed) console.log(`    ${id}: ${lhr.audits[id].displayValue ?? lhr.audits[id].title}`);
    }
    return met;
  } finally {
    chrome.kill();
  }
}
