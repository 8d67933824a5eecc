import assert from "node:assert/strict";

export const name = "A mouse drags the carriage and the deck, wildly too, and everything follows";

export async function run({ page, risewright }) {
  await risewright.open();
  const start = await risewright.height();

  // The carriage, inwards: the deck rises.
  const ring = await risewright.grip("carriage");
  await page.mouse.move(ring.x + 3, ring.y - 2);
  await page.mouse.down();
  await page.mouse.move(ring.x - 27, ring.y + 40, { steps: 10 });
  await risewright.drawn();
  const raised = await risewright.height();
  assert.ok(raised > start + 20, `${start} to ${raised}`);
  const moved = await risewright.grip("carriage");
  assert.ok(Math.abs(moved.x - (ring.x - 30)) < 1, "the ring keeps its distance from the pointer");
  assert.ok(Math.abs(moved.y - ring.y) < 0.5, "the ring stays on its rail");
  await page.mouse.up();

  // A move without a button changes nothing.
  await page.mouse.move(ring.x + 200, ring.y);
  await risewright.drawn();
  assert.equal(await risewright.height(), raised);

  // The deck, far beyond both ends and back.
  const deck = await risewright.grip("deck");
  await page.mouse.move(deck.x, deck.y);
  await page.mouse.down();
  for (const [x, y, height] of [[deck.x - 300, -500, 1160], [5000, 5000, 520]]) {
    await page.mouse.move(x, y, { steps: 3 });
    await risewright.drawn();
    assert.equal(Math.round(await risewright.height()), height);
  }
  await page.mouse.move(deck.x, deck.y + 10, { steps: 3 });
  await risewright.drawn();
  const after = await risewright.grip("deck");
  assert.ok(Math.abs(after.y - (deck.y + 10)) <= 1, "the deck follows the pointer to the pixel");

  // Escape puts it back where it was taken.
  await page.keyboard.press("Escape");
  await risewright.drawn();
  assert.ok(Math.abs((await risewright.height()) - raised) < 1e-6);
  await page.mouse.up();

  // There and back again is a drag, not a press on the part.
  const again = await risewright.grip("carriage");
  await page.mouse.move(again.x, again.y);
  await page.mouse.down();
  await page.mouse.move(again.x - 30, again.y, { steps: 5 });
  await page.mouse.move(again.x, again.y, { steps: 5 });
  await page.mouse.up();
  await risewright.drawn();
  assert.match(await page.evaluate(() => location.hash), /^#1\/elevation/);
}
