// The Risewright page as a person meets it: the one place where the tests know its markup.

/** The views that are read as a document: word in the address, and title. */
export const DOCUMENTS = [
  ["strength", "Strength"],
  ["forces", "Forces"],
  ["sway", "Sway"],
  ["sheets", "Sheets"],
  ["drilling", "Drilling"],
  ["hardware", "Hardware"],
  ["steps", "Build order"],
  ["packet", "Packet"],
  ["targets", "Targets"],
  ["helps", "What helps"],
  ["compare", "Compare"],
  ["lessons", "Lessons"],
  ["shelf", "Shelf"],
  ["sources", "Sources"],
];

/** Longer than what nobody sees waits until it follows the deck, ms. */
const REST = 160;

export class RisewrightPage {
  /** `page` is Playwright's, `address` where the built page is served. */
  constructor(page, address) {
    this.page = page;
    this.address = address;
  }

  /** Opens the page at a fragment such as `#1/strength/` and waits until the program has drawn it. */
  async open(fragment = "") {
    // A new fragment alone would not load the page anew.
    await this.page.goto("about:blank");
    await this.page.goto(this.address + fragment);
    await this.ready();
  }

  /** Follows a link to another view while the page stays. */
  async follow(fragment) {
    await this.page.evaluate((fragment) => (location.hash = fragment), fragment);
  }

  /** Waits until the program has replaced the static first view. */
  async ready() {
    await this.page.locator("#app main").waitFor();
  }

  /** Waits until the service worker has kept the page for use without a network. */
  async kept() {
    await this.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const worker = registration.active;
      while (worker.state !== "activated") await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
    });
  }

  /** Goes to a view by its tab and waits until it can be read. */
  async view(title) {
    await this.page.getByRole("navigation", { name: "Views" }).getByRole("link", { name: title }).click();
    await this.read(title);
  }

  /** Waits until the document of a view stands there, though work may go on behind it. */
  async read(title) {
    await this.page.locator(".reader h2", { hasText: title }).first().waitFor({ timeout: 20_000 });
  }

  /** Waits until a document is complete; it is busy from the moment when a newer one is asked for. What helps takes a quiet machine 10 s. */
  async done(title) {
    await this.read(title);
    await this.page.waitForFunction(() => !document.querySelector(".reader[aria-busy], .working"), null, { timeout: 240_000 });
  }

  /** The deck's height in millimetres, unrounded. */
  async height() {
    // What nobody sees follows when the deck rests.
    await this.drawn();
    await this.pass(REST);
    return 1000 * Number(await this.carriage.inputValue());
  }

  /** Waits so long, ms, by the page's own clock: whatever the page does after a shorter time has been done by then, however busy it is. */
  async pass(time) {
    await this.page.evaluate((time) => new Promise((done) => setTimeout(done, time)), time);
  }

  /** Waits until what would help has been tried against every finding. */
  async advised() {
    await this.drawn();
    await this.pass(REST);
    // One finding after the other is tried, each in a turn of the page's own; the turns here come no oftener than twice between two of those.
    await this.page.evaluate(async () => {
      const findings = document.querySelectorAll(".findings li").length;
      for (let turn = 0; turn < 10 + 3 * findings; turn += 1) await new Promise((done) => setTimeout(done));
    });
    await this.page.locator(".findings .awaited").first().waitFor({ state: "detached" });
  }

  /** Waits until the picture shows the present state: two frames, since a drag is drawn in the next one. */
  async drawn() {
    await this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  }

  /** The slider of the carriage, in deck height. */
  get carriage() {
    return this.page.getByRole("slider", { name: "Carriage" });
  }

  /** The slider of the crank, in turns. */
  get crank() {
    return this.page.getByRole("slider", { name: "Crank" });
  }

  /** A button by its words. */
  button(name) {
    return this.page.getByRole("button", { name });
  }

  /** What the crank strip says: `turns`, `raise`, `lower` or `time`. */
  reading(name) {
    return this.page.locator(`[data-reading=${name}]`);
  }

  /** Numbers of a row of the table of values, such as "Screw force". */
  async values(row) {
    // The table follows when the deck rests.
    await this.page.waitForFunction(() => {
      const heading = document.querySelector(".values thead th")?.textContent.replace(/^At /, "deck ");
      return document.querySelector(".carriage-slider").ariaValueText.startsWith(`${heading},`);
    });
    const cells = await this.page.locator(".values tr", { hasText: row }).locator("td").allTextContents();
    return cells.map((text) => Number(text.replace("\u2212", "-")));
  }

  /** Opens the group that holds an input and returns the input. A group makes its inputs when it is opened for the first time. */
  async input(label) {
    const inputs = this.page.getByRole("complementary", { name: "Inputs" });
    const input = inputs.getByLabel(label, { exact: true });
    for (const group of (await input.count()) ? [] : await inputs.locator("details").all()) {
      const open = await group.evaluate((element) => element.open || !(element.open = true));
      await group.locator(".row").first().waitFor({ state: "attached" });
      if (await input.count()) break;
      if (!open) await group.evaluate((element) => (element.open = false));
    }
    await input.evaluate((element) => (element.closest("details").open = true));
    return input;
  }

  /** Writes into an input and leaves it. */
  async write(label, text) {
    const input = await this.input(label);
    await input.fill(text);
    await input.press("Enter");
    await this.drawn();
  }

  /** The refusal beneath an input. */
  async refusal(label) {
    const input = await this.input(label);
    return this.page.locator(`#${await input.getAttribute("id")}-no`);
  }

  /** The middle of the ring at the carriage, or of the grip at the deck, in the window. */
  async grip(name) {
    const hold = { carriage: "circle.hold.ring", deck: "circle.hold.deck" }[name];
    const box = await this.page.locator(hold).boundingBox();
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  }

  /** Everything in the picture that a person sees, as text: marks with their places, and the pixels of the curves. */
  picture() {
    return this.page.evaluate(() => {
      const marks = ["still", "moving"].map((layer) => document.querySelector(`.figure .${layer}`).innerHTML);
      return [...marks, document.querySelector(".figure canvas").toDataURL()].join("\n");
    });
  }

  /**
   * What has the focus: its words, whether it lies in the window with nothing over it, and whether the focus shows, as an outline of two
   * pixels and more on it or on what stands for it in the picture.
   */
  focused() {
    return this.page.evaluate(() => {
      const element = document.activeElement;
      if (element === document.body) return null;
      const [outlined, ring] = { "carriage-slider": [null, ".figure .hold.ring"], "crank-slider": [".crank-slider ~ svg", null] }[
        element.classList[0]
      ] ?? [element, null];
      const styled = (shape) => getComputedStyle(typeof shape === "string" ? document.querySelector(shape) : shape);
      const shown = ring
        ? styled(ring).stroke !== "none" && Number.parseFloat(styled(ring).strokeWidth) >= 2
        : styled(outlined).outlineStyle !== "none" && Number.parseFloat(styled(outlined).outlineWidth) >= 2;
      const box = element.getBoundingClientRect();
      const [x, y] = [box.left + Math.min(box.width / 2, 8), box.top + box.height / 2];
      const over = document.elementFromPoint(x, y);
      const drawn = Boolean(ring) || ["crank-slider", "plot-slider"].includes(element.classList[0]);
      const words = [element.getAttribute("aria-label"), element.labels?.[0]?.textContent, element.textContent];
      return {
        words: words.find((text) => text?.trim())?.trim() ?? element.outerHTML.slice(0, 80),
        // Told apart by their place among all: many have no id.
        place: [...document.querySelectorAll("*")].indexOf(element),
        visible: element.matches(":focus-visible") && shown,
        uncovered: drawn || (over !== null && (element.contains(over) || over.contains(element))),
      };
    });
  }

  /** Everything a person could want to reach by key at present, as `focused` names it: words and place. */
  reachable() {
    return this.page.evaluate(() => {
      const all = [...document.querySelectorAll("*")];
      return all
        .map((element, place) => ({ element, place }))
        .filter(({ element }) => element.matches("a[href], button, input, select, summary, [tabindex='0']"))
        .filter(({ element }) => element.checkVisibility({ visibilityProperty: true }) && !element.disabled && element.tabIndex >= 0)
        .map(({ element, place }) => ({ words: (element.getAttribute("aria-label") ?? element.textContent.trim()) || element.id, place }));
    });
  }

  /** Presses Tab until what has the focus begins with these words; fails after a round through the page, or where the focus is not seen. */
  async tabTo(words) {
    for (let press = 0; press < 250; press += 1) {
      await this.page.keyboard.press("Tab");
      const focused = await this.focused();
      if (focused?.words.startsWith(words)) {
        if (!focused.visible) throw new Error(`The focus on ${words} does not show`);
        return;
      }
    }
    throw new Error(`Tab never reaches ${words}`);
  }

  /**
   * All lettering of the picture: words, classes, and the box of its ink in the picture, CSS pixels. What the browser draws is measured:
   * how far the words reach in the font they stand in.
   */
  lettering() {
    return this.page.evaluate(() => {
      const pen = document.createElement("canvas").getContext("2d");
      return [...document.querySelectorAll(".figure svg .still text, .figure svg .moving text")]
        .filter((text) => text.textContent)
        .map((text) => {
          const style = getComputedStyle(text);
          pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
          const ink = pen.measureText(text.textContent);
          const wide = text.getComputedTextLength();
          const before = { start: 0, middle: wide / 2, end: wide }[style.textAnchor];
          const place = text.parentElement.transform.baseVal.consolidate().matrix;
          const at = { x: place.e, y: place.f };
          const [from, to] = [-before - ink.actualBoundingBoxLeft, -before + ink.actualBoundingBoxRight];
          const [above, below] = [ink.actualBoundingBoxAscent, ink.actualBoundingBoxDescent];
          // Turned text runs upwards, its upper side to the left.
          const box = place.b !== 0
            ? { left: at.x - above, right: at.x + below, top: at.y - to, bottom: at.y - from }
            : { left: at.x + from, right: at.x + to, top: at.y - above, bottom: at.y + below };
          return { words: text.textContent, classes: [...text.classList], ...box };
        });
    });
  }

  /** Width and height of the picture, CSS pixels. */
  async extent() {
    const picture = this.page.locator(".figure > svg");
    return { width: Number(await picture.getAttribute("width")), height: Number(await picture.getAttribute("height")) };
  }

  /** Heights in the picture, CSS pixels: its level lines, the grip at the deck's edge, and the dots on the level line. */
  levels() {
    return this.page.evaluate(() => {
      const y = (line) => Number(line.getAttribute("y1"));
      const picture = document.querySelector(".figure > svg").getBoundingClientRect();
      const grip = document.querySelector("circle.hold.deck").getBoundingClientRect();
      const middle = (shape) => shape.getBBox().y + shape.getBBox().height / 2;
      const dots = [...document.querySelectorAll(".figure .moving path[class^=d-]")].filter((dot) => dot.getAttribute("d"));
      return {
        lines: [...document.querySelectorAll(".figure .moving line.level")].map(y),
        deck: grip.top + grip.height / 2 - picture.top,
        dots: dots.map(middle),
      };
    });
  }

  /** The part of the address that holds the design; waits until the late write is done. */
  async link() {
    // The link of the present view is that of the present design, at once.
    await this.page.waitForFunction(() => location.href === document.querySelector("[aria-current=page]").href);
    return this.page.evaluate(() => location.hash);
  }
}
