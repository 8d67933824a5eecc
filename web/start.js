// Starts the program and, once it runs, keeps the page for use without a network.
import start from "./page.js";

function say(sentence) {
  const notice = document.createElement("p");
  notice.setAttribute("role", "alert");
  notice.textContent = sentence;
  document.getElementById("app").before(notice);
}

if (typeof WebAssembly === "object") {
  try {
    await start();
  } catch (trouble) {
    say(`Risewright could not start (${trouble}). Reload the page; if that does not help, update the browser.`);
    throw trouble;
  }
  if ("serviceWorker" in navigator) {
    // Refused in private windows and in some embedded frames: the page works all the same, only not offline.
    navigator.serviceWorker.register(new URL("../offline.js", import.meta.url)).catch(() => {});
  }
} else {
  say("Risewright needs WebAssembly, which this browser lacks or has switched off.");
}
