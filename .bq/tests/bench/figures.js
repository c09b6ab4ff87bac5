// A measured figure beside its goal, and the table of them: printed, and written into the README with machine and day.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
export const atLeast = (goal) => ({ goal: `≥ ${goal}`, meets: (median) => median >= goal });
export const atMost = (goal) => ({ goal: `≤ ${goal}`, meets: (median) => median <= goal });
/** The sample below which `share` of them lie; NaN of none. */
export function quantile(samples, share) {
  const sorted = samples.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
}
export const median = (samples) => quantile(samples, 0.5);
const shown = (value) => (value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2));
function row({ what, goal, unit, samples, meets, missing }) {
  if (missing !== undefined || samples.length === 0) return `| ${what} | ${goal} ${unit} | not measured: ${missing ?? 'no sample'} | | |`;
  const middle = median(samples);
  const range = `${shown(Math.min(...samples))} / ${shown(middle)} / ${shown(Math.max(...samples))}`;
  return `| ${what} | ${goal} ${unit} | ${shown(middle)} ${unit} | ${range} | ${meets(middle) ? 'met' : '**short**'} |`;
}
/** The table as Markdown, under a line that says where and when. */
export function table(figures, sizes, on) {
  const [cpu] = cpus();
  const machine = `${cpus().length} × ${cpu?.model.trim() ?? 'processor'}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
  const head = `Measured on ${on} (${machine}), shops of ${sizes.map((size) => size.toLocaleString('en')).join(', ')} entries.`;
  return [head, '', '| what | goal | figure | min / median / max | |', '|---|---|---|---|---|', ...figures.map(row)].join('\n');
}
const FROM = '<!-- bench -->';
const TO = '<!-- /bench -->';
/** Puts the table between its two marks in the README; throws where they are not there. */
export function writeInto(readme, text) {
  const whole = readFileSync(readme, 'utf8');
  const [from, to] = [whole.indexOf(FROM), whole.indexOf(TO)];
  if (from === -1 || to < from) throw new Error(`${readme} has no place for the table: put ${FROM} and ${TO} in it.`);
  writeFileSync(readme, `${whole.slice(0, from + FROM.length)}\n${text}\n${whole.slice(to)}`);
}
