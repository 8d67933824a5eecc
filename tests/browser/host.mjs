// A plain static host that sets no headers of its own, with the built page below a path: what most people publish on.
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";
import { DIST } from "./server.mjs";

const BELOW = "/some/where/";
const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml", ".wasm": "application/wasm" };

/** The name of the folder that carries the built page's version. */
export async function builtVersion() {
  return (await readFile(join(DIST, "index.html"), "utf8")).match(/src="(\w+)\/start\.js"/)[1];
}

/**
 * Starts the host. `publish(version)` makes it serve the built page as though it were of that version, and no longer as
 * any other. `stop()` ends it, open connections too.
 */
export async function plainHost() {
  const built = await builtVersion();
  let published = built;
  const server = createServer(async (request, response) => {
    const path = new URL(request.url, "http://host").pathname;
    try {
      if (!path.startsWith(BELOW)) throw new Error("elsewhere");
      const file = path === BELOW ? "index.html" : normalize(path.slice(BELOW.length));
      if (published !== built && file.startsWith(built)) throw new Error("no longer published");
      let contents = await readFile(join(DIST, file.replace(published, built)));
      if (extname(file) !== ".wasm") contents = contents.toString().replaceAll(built, published);
      response.writeHead(200, { "content-type": TYPES[extname(file)] }).end(contents);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  return {
    address: `http://127.0.0.1:${server.address().port}${BELOW}`,
    publish: (version) => {
      published = version;
    },
    stop: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
