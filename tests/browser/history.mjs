// The history of a design as its links tell it.
import assert from "node:assert/strict";

/** Undoes every edit and does all of them again: each step gives the link it gave when the edit was made; `links` begins before the first. */
export async function backAndForth(risewright, links) {
  for (const link of links.slice(0, -1).reverse()) {
    await risewright.button(/^Undo/).click();
    assert.equal(await risewright.link(), link);
  }
  assert.equal(await risewright.button("Undo: nothing").getAttribute("aria-disabled"), "true");
  for (const link of links.slice(1)) {
    await risewright.button(/^Redo/).click();
    assert.equal(await risewright.link(), link);
  }
}
