// Figures as a table on the terminal: one line a figure, with the aim where there is one.
const lines = [];

/** The middle, the 95th of a hundred, and the worst of some figures. */
export function spread(figures) {
  const sorted = [...figures].sort((one, other) => one - other);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { median: at(0.5), p95: at(0.95), worst: sorted.at(-1) ?? Number.NaN };
}

/** A line: what, the figure with its unit, and the aim in words. */
export function tell(what, figure, unit, aim = "") {
  const number = Number.isInteger(figure) ? String(figure) : figure.toFixed(1);
  lines.push([what, `${number} ${unit}`, aim]);
  console.log(`${what.padEnd(58)} ${`${number} ${unit}`.padStart(14)}  ${aim}`);
}

/** A line for the spread of some figures. */
export function tellSpread(what, figures, unit, aim = "") {
  const { median, p95, worst } = spread(figures);
  tell(`${what}: median`, median, unit);
  tell(`${what}: p95`, p95, unit, aim);
  tell(`${what}: worst`, worst, unit);
}

export function heading(words) {
  console.log(`\n${words}`);
}
