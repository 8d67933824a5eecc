// Works beside the page: makes the documents that are read, in slices, and tells what is known so far. A newer request abandons the
// older work. Requests and answers are lists: a word, the number of the request, and what belongs to it.
import start, { Work } from "./work.js";

// Work goes on in slices of so many milliseconds; between them newer requests are heard.
const SLICE = 12;
// What is known so far is told at most this often, ms.
const PAUSE = 250;

const ready = start();
const { port1, port2 } = new MessageChannel();
// The page that is open, and beside it those that are the same for every design: what they have found is not looked for again.
let work = null;
let opened = "";
const others = new Map();
// What each page has heard: the same answer is not given twice.
const heard = new WeakMap();
let drawn = null;
let running = 0;

// A turn of the event loop, without the clamp of nested timers.
const breath = () =>
  new Promise((resolve) => {
    port1.onmessage = resolve;
    port2.postMessage(0);
  });

async function run(request, reader) {
  running = request;
  const show = (more) => postMessage(["page", request, work.html(...reader), work.progress(), more]);
  let told = performance.now();
  let more = true;
  // What is known at once is shown at once.
  if (work.progress() < 1) show(true);
  while (more) {
    const begun = performance.now();
    do more = work.advance();
    while (more && performance.now() - begun < SLICE);
    if (more && performance.now() - told > PAUSE) {
      show(true);
      told = performance.now();
    }
    if (more) await breath();
    if (running !== request) return;
  }
  show(false);
}

// Leaves the page that is open: one that is the same for every design stays as it is.
function leave() {
  if (work && opened.endsWith(" ")) others.set(opened, work);
  else work?.free();
  work = null;
  opened = "";
}

function tell(key, text, reader) {
  const known = heard.get(work) ?? new Map();
  heard.set(work, known);
  if (known.get(key) === text) return;
  known.set(key, text);
  work.answer(key, text, ...reader);
}

async function open(request, view, link, answers, ...reader) {
  running = request;
  const name = `${view} ${link}`;
  if (opened !== name) {
    leave();
    work = others.get(name) ?? Work.open(view, link) ?? null;
    opened = name;
  }
  // Pairs of key and text.
  for (let at = 0; work && at < answers.length; at += 2) tell(answers[at], answers[at + 1], reader);
  work?.pause(false);
  if (work) await run(request, reader);
  else postMessage(["trouble", request, "This page cannot be made of this design."]);
}

const ACTS = {
  open,
  stop() {
    running = 0;
    work?.pause(true);
  },
  // What the reader answers changes the page; while a slider is still held, its picture only.
  async answer(request, key, text, rests, ...reader) {
    // A button may be pressed twice.
    if (work) heard.get(work)?.delete(key);
    if (work) tell(key, text, reader);
    if (work && rests) await run(request, reader);
  },
  // The picture at once, between two slices of work; what belongs to it comes as a list.
  live(request, ...rest) {
    const [seen, inches] = rest.splice(-4);
    const known = drawn === work ? seen : 0;
    drawn = work;
    postMessage(["live", request, ...(work?.live(...rest, known, inches) ?? [])]);
  },
  // What a file holds that the reader brings; a sentence where that is nothing of ours.
  read(request, text) {
    const [sentence, ...found] = Work.read(text);
    if (sentence) postMessage(["refused", request, sentence]);
    else postMessage(["found", request, ...found]);
  },
  file(request, name, ...reader) {
    const text = work?.file(name, ...reader);
    if (text === undefined) postMessage(["trouble", request, `There is no file ${name} in this page any more.`]);
    else postMessage(["file", request, name, text]);
  },
};

self.onmessage = async ({ data: [act, request, ...rest] }) => {
  try {
    await ready;
    await ACTS[act](request, ...rest);
  } catch (trouble) {
    // After a trap the module is dead; the page starts another worker.
    postMessage(["dead", request, String(trouble)]);
  }
};
