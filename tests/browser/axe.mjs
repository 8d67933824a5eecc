// Accessibility by axe-core, over every WCAG 2.2 rule of levels A and AA.
import axe from "axe-core";

const OPTIONS = {
  runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
  // Off by default in axe-core, though the 24 px target of WCAG 2.2 (2.5.8) is level AA.
  rules: { "target-size": { enabled: true } },
  resultTypes: ["violations"],
};

/** What axe finds wrong on `page` as it stands now: one line an element, empty when all is well. */
export async function violations(page) {
  if (!(await page.evaluate("typeof axe === 'object'"))) await page.evaluate(axe.source);
  const found = await page.evaluate((options) => window.axe.run(document, options), OPTIONS);
  return found.violations.flatMap((rule) =>
    rule.nodes.map((node) => `axe ${rule.id}: ${rule.help}, at ${node.target.join(" ")} (${node.html.slice(0, 120)})`),
  );
}
