// One finger on the screen, as the browser itself sees it. Points are { x, y } in CSS pixels of the viewport.

/** Puts a finger down at `from`, moves it to `to` in `steps` equal moves a frame apart, and lifts it. */
export async function drag(page, from, to, steps = 12) {
  const session = await page.context().newCDPSession(page);
  const touch = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  try {
    await touch("touchStart", [from]);
    for (let step = 1; step <= steps; step += 1) {
      const share = step / steps;
      await touch("touchMove", [{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }]);
      await page.evaluate(() => new Promise(requestAnimationFrame));
    }
    await touch("touchEnd", []);
  } finally {
    await session.detach();
  }
}

/** A short press at `point`. */
export async function tap(page, point) {
  await page.touchscreen.tap(point.x, point.y);
}
