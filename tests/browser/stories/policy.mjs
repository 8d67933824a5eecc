import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { DIST, TRIAL } from "../server.mjs";
import { WORD } from "../trial.mjs";

export const name = "The policy refuses markup that runs, scripts and requests from elsewhere, and a breach is seen; no published page fails on demand";

// The attempts below.
export const expected = [/^content policy: /, /^console error: .*Content Security Policy/i, /^no answer: .*csp/];

const REFUSED = {
  script: "<p>text</p><script>window.ran = 1</script>",
  handler: '<svg><path onload="window.ran = 1"/></svg>',
  picture: "<img src=x onerror=window.ran=1>",
  address: '<a href="javascript:window.ran=1">x</a>',
  hidden: '<p title="<img src=x onerror=window.ran=1>">x</p>',
  frame: '<iframe srcdoc="x"></iframe>',
  style: '<p style="color:red">x</p>',
};
const ALLOWED = '<p class="a" data-b="x > y">5 &lt; 6 <a href="https://example.org/#1/elevation/a">link</a><br><input disabled></p>';

export async function run({ page, risewright, problems }) {
  await risewright.open();
  assert.deepEqual(problems, [], "silent until now");
  const outcome = await page.evaluate(
    async ([refused, allowed]) => {
      const made = document.createElement("div");
      const passes = (act) => {
        try {
          act();
          return true;
        } catch {
          return false;
        }
      };
      const through = Object.entries(refused).filter(([, text]) => passes(() => (made.innerHTML = text)));
      made.innerHTML = allowed;
      const kept = made.querySelector("a").textContent;
      const worker = passes(() => new Worker("elsewhere.js"));
      const policy = passes(() => trustedTypes.createPolicy("other", {}));
      const asked = await fetch("https://example.org/").then(
        () => true,
        () => false,
      );
      await new Promise((done) => setTimeout(done, 100));
      return { through, kept, worker, policy, asked, ran: "ran" in window };
    },
    [REFUSED, ALLOWED],
  );
  assert.deepEqual(outcome, { through: [], kept: "link", worker: false, policy: false, asked: false, ran: false });
  // The listener that is silent in all other stories has heard these.
  for (const directive of ["connect-src https://example.org", "trusted-types trusted-types-policy"]) {
    const heard = () => problems.some((problem) => problem.startsWith(`content policy: ${directive}`));
    // It is told by the page, some time after the breach.
    for (const begun = Date.now(); !heard() && Date.now() - begun < 20_000; ) await page.waitForTimeout(20);
    assert.ok(heard(), `${directive}\n${problems.join("\n")}`);
  }

  const module = async (dist) => {
    const version = (await readFile(join(dist, "index.html"), "utf8")).match(/src="(\w+)\/start\.js"/)[1];
    return readFile(join(dist, version, "page_bg.wasm"));
  };
  assert.ok((await module(TRIAL)).includes(WORD), "the page that fails on demand has the word");
  assert.ok(!(await module(DIST)).includes(WORD), "the page that is published does not");
}
