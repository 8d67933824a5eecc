// Starts the program, watches over it, and brings the page back when it fails. After a failure nothing of the program itself can be relied
// upon, so that all of this happens here.
import "./policy.js";

/** What the tab remembers: failures in a row, what was said at the last, a start that is under way, a return to tell of, the tab's name. */
const ROW = "risewright.failures";
const REASON = "risewright.reason";
const STARTING = "risewright.starting";
const RETURN = "risewright.return";
const TAB = "risewright.tab";

/** After so many failures in a row the program is not started again by itself. */
const MOST = 3;
/** A program that has lived so long, ms, was healthy: a failure after that is the first of a row. */
const HEALTHY = 30_000;
/** How long the first view may take to come on screen, ms. */
const PATIENCE = 100;
/** How long one can read, ms, that the page comes back. */
const READING = 600;

const app = document.getElementById("app");
let aliveSince = Infinity;
let failed = false;

function recall(key) {
  try {
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Whether it could be remembered. */
function remember(key, value) {
  try {
    if (value === null) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, value);
    return true;
  } catch {
    return false;
  }
}

const row = () => Number(recall(ROW)) || 0;

const wasHealthy = () => performance.now() - aliveSince > HEALTHY;

/** Says a sentence above the page, with a button to load it again where that may help. */
function say(sentence, again) {
  const notice = document.createElement("div");
  notice.setAttribute("role", "alert");
  notice.className = "trouble";
  notice.append(Object.assign(document.createElement("p"), { textContent: sentence }));
  if (again) {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "main", textContent: "Try again" });
    button.addEventListener("click", () => location.reload());
    notice.append(button);
  }
  app.before(notice);
}

async function startSafely() {
  app.inert = false;
  try {
    const { show } = await import("./safe.js");
    show(app, { reason: recall(REASON), again, anew });
  } catch {
    app.replaceChildren();
    say(`Risewright has failed again and again and is not started any more. Your design is in this address: ${location.href}`, true);
  }
}

/** Once more with the kept design; another failure leads straight back to the safe start. */
function again() {
  remember(ROW, MOST - 1);
  location.reload();
}

/** With the first demo, as a tab of its own: what this one kept stays. */
function anew() {
  remember(ROW, null);
  remember(RETURN, null);
  delete document.documentElement.dataset.tab;
  history.pushState(null, "", "#1/elevation/a");
  location.reload();
}

/** The program has failed: the page comes back, or, when that has not helped, says what there is to do. */
function fail(trouble) {
  if (failed) return;
  failed = true;
  // What still stands there does nothing any more.
  app.inert = true;
  const inRow = wasHealthy() ? 1 : row() + 1;
  if (!recall(REASON)) remember(REASON, String(trouble));
  remember(RETURN, "1");
  if (remember(ROW, inRow)) {
    say("Something in the program has failed. It is being started again with your design.");
    scrollTo(0, 0);
    setTimeout(() => location.reload(), READING);
  } else {
    // Whoever cannot remember might load the page for ever.
    startSafely();
  }
}

/** Whether an error came out of the program: it traps, or something thrown passed through it and left it in the middle of its work. */
const isOfTheProgram = (trouble) => trouble instanceof WebAssembly.RuntimeError || /wasm-function/.test(trouble?.stack ?? "");

function hear(trouble) {
  if (isOfTheProgram(trouble)) fail(trouble);
}

/**
 * When the first view goes on screen. The program is asked for after that: on a slow line it would take its share from the style sheet, and then
 * the processor from the first paint. A page that is hidden need not wait, and one that gets no frames does not.
 */
function shown() {
  if (document.hidden) return null;
  return new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, PATIENCE);
  });
}

/** When the page is made: the first view is gone then. */
function made() {
  return new Promise((resolve) => {
    const look = () => {
      if (!app.querySelector(".first")) resolve();
    };
    new MutationObserver(look).observe(app, { childList: true });
    look();
  });
}

async function start() {
  addEventListener("error", ({ error }) => hear(error));
  addEventListener("unhandledrejection", ({ reason }) => hear(reason));
  remember(STARTING, "1");
  remember(REASON, null);
  try {
    const [{ default: run }] = await Promise.all([import("./page.js"), shown()]);
    await run();
  } catch (trouble) {
    console.error(trouble);
    if (isOfTheProgram(trouble)) {
      fail(trouble);
    } else {
      app.replaceChildren();
      const advice = "Check the connection and try again; if that does not help, update the browser.";
      say(`Risewright could not be loaded (${trouble}). ${advice}`, true);
    }
    return;
  }
  made().then(() => {
    if (failed) return;
    aliveSince = performance.now();
    remember(STARTING, null);
  });
  if ("serviceWorker" in navigator) {
    // Refused in private windows and in some embedded frames: the page works all the same, only not offline.
    navigator.serviceWorker.register(new URL("../offline.js", import.meta.url)).catch(() => {});
  }
}

/**
 * The name under which this tab keeps its design. While the page is open the tab's storage does not hold it: so a duplicate of the tab,
 * which gets a copy of that storage, gets a name of its own.
 */
function nameTab() {
  const name = recall(TAB) ?? Array.from(crypto.getRandomValues(new Uint32Array(2)), (part) => part.toString(36)).join("");
  document.documentElement.dataset.tab = name;
  remember(TAB, null);
  addEventListener("pagehide", () => {
    remember(STARTING, null);
    if (wasHealthy() && !failed) remember(ROW, null);
    remember(TAB, document.documentElement.dataset.tab ?? null);
  });
  addEventListener("pageshow", ({ persisted }) => {
    if (persisted) remember(TAB, null);
  });
}

nameTab();
// The browser's process itself ended while the program was starting.
if (recall(STARTING)) remember(ROW, row() + 1);
if (typeof WebAssembly !== "object") say("Risewright needs WebAssembly, which this browser lacks or has switched off.");
else if (row() >= MOST) startSafely();
else start();
