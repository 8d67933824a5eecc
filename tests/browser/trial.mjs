// The page that fails on demand: `cargo run --release -- --build-only --trial --dist target/trial`.
import { RisewrightPage } from "./page.mjs";
import { serve, TRIAL } from "./server.mjs";

/** The word by which it is asked to fail, which no other page has. */
export const WORD = "risewright-trial";

/** The kinds of failure: a panic in three places, a trap without a panic, and a stack that ends. */
export const KINDS = ["handler", "effect", "task", "trap", "stack"];

/** What a failure leaves on the console, by the patterns of a story's `expected`. */
export const NOISE = [
  /panicked at/,
  /RuntimeError: unreachable/,
  /RangeError: Maximum call stack size exceeded/,
  /RuntimeError: memory access out of bounds/,
  /^no answer: .*ERR_ABORTED/,
];

/** Serves it and calls `act` with the page as a person meets it, and with `fail(kind)`. */
export async function onTrial(page, act) {
  const server = await serve(TRIAL);
  try {
    const fail = (kind) =>
      page.evaluate(
        ([word, detail]) => {
          document.documentElement.dataset.failed = "";
          window.dispatchEvent(new CustomEvent(word, { detail }));
        },
        [WORD, kind],
      );
    await act(new RisewrightPage(page, server.address), fail, server.address);
  } finally {
    server.stop();
  }
}

/** Waits until the page has come back after a failure: another document, which says so. */
export async function comeBack(page) {
  await page.locator("html:not([data-failed]) .notice", { hasText: "was started again" }).waitFor();
}
