// What lies on the pages of a PDF, as far as a ruler is concerned: straight outlines in points, from its drawing operators (ISO 32000-1).
import { inflateSync } from "node:zlib";

/** Every content stream of the file as text. */
function streams(bytes) {
  const text = bytes.toString("latin1");
  const found = [];
  for (const start of text.matchAll(/stream\r?\n/g)) {
    const from = start.index + start[0].length;
    const to = text.indexOf("endstream", from);
    if (text.slice(Math.max(0, start.index - 3), start.index) === "end") continue;
    try {
      found.push(inflateSync(bytes.subarray(from, to)).toString("latin1"));
    } catch {
      // Fonts and pictures are packed in other ways.
    }
  }
  return found;
}

const times = ([a, b, c, d, e, f], [g, h, i, j, k, l]) => [
  g * a + h * c, g * b + h * d, i * a + j * c, i * b + j * d, k * a + l * c + e, k * b + l * d + f,
];

/** Boxes { x, y, width, height } in points of all outlines on its pages. */
export function outlines(bytes) {
  return streams(bytes).flatMap(boxes);
}

function boxes(stream) {
  let matrix = [1, 0, 0, 1, 0, 0];
  const saved = [];
  const found = [];
  let points = [];
  let numbers = [];
  const put = (x, y) => points.push([matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5]]);
  const close = () => {
    if (points.length > 1) {
      const [x, y] = [0, 1].map((axis) => points.map((point) => point[axis]));
      const [left, low] = [Math.min(...x), Math.min(...y)];
      found.push({ x: left, y: low, width: Math.max(...x) - left, height: Math.max(...y) - low });
    }
    points = [];
  };
  for (const token of stream.split(/\s+/)) {
    if (/^[-+.\d]/.test(token)) {
      numbers.push(Number(token));
      continue;
    }
    const [a, b, c, d, e, f] = numbers.slice(-6);
    if (token === "q") saved.push(matrix);
    else if (token === "Q") matrix = saved.pop() ?? matrix;
    else if (token === "cm") matrix = times(matrix, [a, b, c, d, e, f]);
    else if (token === "m") {
      close();
      put(a, b);
    } else if (token === "l") put(a, b);
    else if (token === "re") {
      close();
      put(a, b);
      put(a + c, b + d);
      close();
    } else if (/^(h|S|s|f|f\*|B|n|W)$/.test(token) && token !== "W" && token !== "h") close();
    numbers = [];
  }
  return found;
}
