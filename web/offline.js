// Keeps one whole version of the page for use without a network. VERSION and FILES are filled in when the page is built.
//
// Everything but the entry page stands in a folder named after the version, and the entry page names that folder: so files
// of two versions can never meet. With a network the newest entry page wins; without one, the version kept here.
const VERSION = "__VERSION__";
const FILES = ["__FILES__"];

const ROOT = self.registration.scope;
const ENTRY = new URL("index.html", ROOT).href;
// Pages under other paths of one host share its caches: the scope keeps them apart.
const KEPT = `risewright ${ROOT} `;
const CACHE = KEPT + VERSION;
// On a link too slow to answer in this time (ms), the version kept here starts at once.
const PATIENCE = 2500;

async function keep() {
  const answers = await Promise.all(
    FILES.map(async (file) => {
      const answer = await fetch(new URL(file, ROOT), { cache: file.includes("/") ? "default" : "no-cache" });
      if (!answer.ok) throw new Error(`${file}: status ${answer.status}`);
      return [new URL(file, ROOT).href, answer];
    }),
  );
  // The host may have been given a newer version since this file was fetched: then keep nothing and try again later.
  const entry = answers.find(([address]) => address === ENTRY)[1];
  if (!(await entry.clone().text()).includes(`${VERSION}/`)) throw new Error("the entry page is of another version");
  const cache = await caches.open(CACHE);
  await Promise.all(answers.map(([address, answer]) => cache.put(address, answer)));
}

async function forgetOthers() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(KEPT) && name !== CACHE).map((name) => caches.delete(name)));
}

async function kept(address) {
  const cache = await caches.open(CACHE);
  return cache.match(address);
}

async function newestEntry() {
  try {
    const answer = await fetch(ENTRY, { cache: "no-cache", signal: AbortSignal.timeout(PATIENCE) });
    if (answer.ok && !answer.redirected) return answer;
  } catch {
    // No network, or too slow.
  }
  return (await kept(ENTRY)) ?? fetch(ENTRY);
}

self.addEventListener("install", (event) => event.waitUntil(keep()));

self.addEventListener("activate", (event) => event.waitUntil(forgetOthers().then(() => self.clients.claim())));

self.addEventListener("fetch", (event) => {
  const address = event.request.url.split(/[?#]/, 1)[0];
  if (event.request.method !== "GET" || !address.startsWith(ROOT)) return;
  if (address === ROOT || address === ENTRY) {
    event.respondWith(newestEntry());
  } else {
    event.respondWith(kept(address).then((answer) => answer ?? fetch(event.request)));
  }
});
