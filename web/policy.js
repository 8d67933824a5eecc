// What may become markup or a script's address in this page. The content policy asks for one policy under this name; the browser puts
// every string through it that is about to become either.

const elements = (words) => words.trim().split(/\s+/).join("|");

/** Elements that show something; none that runs, loads, embeds, restyles, or reads its inside by rules of its own. */
const ELEMENTS = elements(`
  a abbr article aside b br button caption circle clipPath code col colgroup dd defs del desc details div dl dt ellipse em fieldset
  figcaption figure footer g h1 h2 h3 h4 h5 h6 header hr i input kbd label legend li line linearGradient main mark marker meter nav ol
  optgroup option output p path pattern polygon polyline pre progress rect samp section select small span stop strong sub summary sup
  svg symbol table tbody td text tfoot th thead time title tr tspan u ul use var wbr`);

/** Addresses of the web, of a place in this page, or of a file beside it: no other scheme, and no reference that might spell one. */
const ADDRESS = String.raw`(?:https?:\/\/|#|[\w.\/-]*(?=["#?]))[^"<]*`;
const ATTRIBUTE = String.raw`\s+(?:href="${ADDRESS}"|(?!on|style|src|href|xlink|action|form)[\w:-]+(?:="[^"<]*")?)`;
/** A whole tag. No value holds a “<”, so that the browser cannot see a tag where this sees none. */
const TAG = new RegExp(String.raw`<(?:\/(?:${ELEMENTS})|(?:${ELEMENTS})(?:${ATTRIBUTE})*\s*\/?)>`, "gi");

/** The text itself where each “<” in it begins a tag of the list; every other text is refused. */
function createHTML(text) {
  const rest = text.replace(TAG, "");
  const at = rest.indexOf("<");
  if (at < 0) return text;
  throw new TypeError(`This is no markup of the page: ${rest.slice(at, at + 80)}`);
}

/** The two scripts that run beside the page, and no others. */
const SCRIPTS = ["worker.js", "../offline.js"].map((name) => new URL(name, import.meta.url).href);

function createScriptURL(address) {
  if (SCRIPTS.includes(new URL(address, document.baseURI).href)) return address;
  throw new TypeError(`This is no script of the page: ${address}`);
}

// Browsers without trusted types keep to the rest of the content policy.
globalThis.trustedTypes?.createPolicy("default", { createHTML, createScriptURL });
