// The safe start: a plain page, without the program, after it has failed again and again.

const element = (tag, properties, ...content) => {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...content);
  return made;
};

/** The link of the design that was kept last: that in the address, else the newest in the browser's storage; null where there is none. */
function keptLink() {
  if (location.hash.length > 1) return location.href;
  let newest = { stamp: -1 };
  try {
    for (const [key, text] of Object.entries(localStorage)) {
      const [stamp, , design] = text.split(" ");
      if (key.startsWith("risewright.design.") && design && Number(stamp) > newest.stamp) newest = { stamp: Number(stamp), design };
    }
  } catch {
    // Storage is refused.
  }
  return newest.design ? `${location.href.split("#")[0]}#1/elevation/${newest.design}` : null;
}

function offer(link) {
  const field = element("textarea", { id: "kept-design", readOnly: true, rows: 3, value: link, spellcheck: false });
  const said = element("span", { className: "said" });
  said.setAttribute("role", "status");
  const copy = element("button", { type: "button", textContent: "Copy link" });
  field.addEventListener("focus", () => field.select());
  copy.addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(link);
      said.textContent = "Copied.";
    } catch {
      field.focus();
      said.textContent = "The browser does not let the page copy: the link is selected, copy it by key or menu.";
    }
  });
  return [
    element("label", { htmlFor: field.id, textContent: "Your design, as a link:" }),
    field,
    element("p", { className: "acts-below" }, copy, said),
  ];
}

/** Puts the page in `place`. `again` and `anew` are what its two buttons do; `reason` is what the program said last, or null. */
export function show(place, { reason, again, anew }) {
  const link = keptLink();
  const button = (words, act) => {
    const made = element("button", { type: "button", className: "main", textContent: words });
    made.addEventListener("click", act);
    return made;
  };
  const page = element(
    "main",
    { className: "safe" },
    element("h1", { textContent: "Risewright has stopped" }),
    element("p", {
      textContent:
        "An error in the program itself ended it several times, one shortly after the other. It is not your doing, and your design is " +
        "not lost. So that this does not go on for ever, the program now waits for you.",
    }),
    ...(link ? offer(link) : [element("p", { textContent: "No design was kept in this browser." })]),
    element(
      "p",
      { className: "acts-below" },
      button(link ? "Try again with this design" : "Try again", again),
      button("Begin with the first demo", anew),
    ),
    ...(reason
      ? [element("details", {}, element("summary", { textContent: "What the program said" }), element("code", { textContent: reason }))]
      : []),
  );
  page.querySelector("h1").tabIndex = -1;
  place.replaceChildren(page);
  document.title = "Risewright has stopped";
  page.querySelector("h1").focus();
}
