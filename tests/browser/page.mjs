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
}
