// The Risewright page as a person meets it: the one place where the tests know its markup.

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

  /** Waits until the program has replaced the static first view. */
  async ready() {
    await this.page.locator("#app main").waitFor({ timeout: 10_000 });
  }

  /** Waits until the service worker has kept the page for use without a network. */
  async kept() {
    await this.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      const worker = registration.active;
      while (worker.state !== "activated") await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
    });
  }

  /** The deck's height in millimetres, unrounded. */
  async height() {
    return 1000 * Number(await this.carriage.inputValue());
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
    const cells = await this.page.locator(".values tr", { hasText: row }).locator("td").allTextContents();
    return cells.map((text) => Number(text.replace("\u2212", "-")));
  }

  /** Opens the group that holds an input and returns the input. */
  async input(label) {
    const input = this.page.getByRole("complementary", { name: "Inputs" }).getByLabel(label, { exact: true });
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

  /** The part of the address that holds the design; waits until the late write is done. */
  async link() {
    // The link of the present view is that of the present design, at once.
    await this.page.waitForFunction(() => location.href === document.querySelector("[aria-current=page]").href);
    return this.page.evaluate(() => location.hash);
  }
}
