// Everything that may not happen on the page while a story runs.

/**
 * Watches `context` from now on. Puts on the list `problems` what happens: errors and warnings on the console, uncaught
 * errors, breaches of the content policy, failed requests, and requests to any other host than that of `address`.
 */
export async function watch(context, address, problems) {
  const { hostname } = new URL(address);
  await context.exposeBinding("reportBreach", (_, breach) => problems.push(`content policy: ${breach}`));
  await context.addInitScript(() => {
    document.addEventListener("securitypolicyviolation", (breach) => {
      window.reportBreach(`${breach.effectiveDirective} ${breach.blockedURI} ${breach.sourceFile}:${breach.lineNumber}`);
    });
  });
  context.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) problems.push(`console ${message.type()}: ${message.text()}`);
  });
  context.on("weberror", (trouble) => problems.push(`uncaught: ${trouble.error()}`));
  context.on("request", (request) => {
    const url = new URL(request.url());
    if (["http:", "https:"].includes(url.protocol) && url.hostname !== hostname) problems.push(`asks another host: ${url}`);
  });
  context.on("requestfailed", (request) => {
    const reason = request.failure()?.errorText;
    // The icon is asked for at some time after the page, and the worker's module is read while it runs already: both are dropped when the
    // page is left before.
    const dropped = /\/(favicon\.svg|work_bg\.wasm)$/.test(request.url()) && reason === "net::ERR_ABORTED";
    if (!dropped) problems.push(`no answer: ${request.url()} (${reason})`);
  });
  context.on("response", (response) => {
    if (response.status() >= 400) problems.push(`status ${response.status()}: ${response.url()}`);
  });
}

/** What a page must not leave behind in its context: cookies. */
export async function leavings(context) {
  return (await context.cookies()).map(({ name, domain }) => `cookie ${name} of ${domain}`);
}
