/* Works the chain out anew, as figures/draws.py and figures/chain.py do: the same draw, the same
   table, the same formulas. pages/own_numbers.py prints `formulas` and `table` ahead of this.

   A column is a Float64Array: the central value, then the samples; of what is exact one value. */

const SAMPLES = table.samples;

/* The strata of the standard normal distribution: Wichura, Applied Statistics 37 (1988) 477,
   algorithm AS 241; its third branch lies beyond the outermost stratum. */

const MIDDLE = [
  [2509.0809287301226727, 33430.575583588128105, 67265.770927008700853, 45921.953931549871457,
    13731.693765509461125, 1971.5909503065514427, 133.14166789178437745, 3.387132872796366608],
  [5226.495278852854561, 28729.085735721942674, 39307.89580009271061, 21213.794301586595867,
    5394.1960214247511077, 687.1870074920579083, 42.313330701600911252, 1],
];
const TAIL = [
  [7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177,
    1.27045825245236838258, 3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959,
    1.42343711074968357734],
  [1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966,
    0.14810397642748007459, 0.68976733498510000455, 1.6763848301838038494, 2.05319162663775882187,
    1],
];

function ratio(pair, r) {
  const [above, below] = pair.map((each) => each.reduce((sum, next) => sum * r + next));
  return above / below;
}

function inverseNormal(p) {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) { return q * ratio(MIDDLE, 0.180625 - q * q); }
  const x = ratio(TAIL, Math.sqrt(-Math.log(q < 0 ? p : 1 - p)) - 1.6);
  return q < 0 ? -x : x;
}

const strata = {};

function stratum(shape) {
  if (!strata[shape]) {
    strata[shape] = Float64Array.from({length: SAMPLES}, (_, i) => {
      const p = (i + 0.5) / SAMPLES;
      return shape === "normal" ? inverseNormal(p) / table.widths : 2 * p - 1;
    });
  }
  return strata[shape];
}

function checksum(text) {
  let sum = ~0;
  for (const byte of new TextEncoder().encode(text)) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) { sum = (sum >>> 1) ^ (sum & 1 ? 0xEDB88320 : 0); }
  }
  return ~sum;
}

const orders = new Map();

/* Which stratum each sample of a named input comes from: the ranks of its hashes. */
function order(name) {
  if (!orders.has(name)) {
    const start = checksum(name), numbered = new Float64Array(SAMPLES);
    for (let i = 0; i < SAMPLES; i += 1) {
      let mixed = Math.imul(i + 1, 0x9E3779B1) ^ start;
      mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85EBCA6B);
      mixed = Math.imul(mixed ^ (mixed >>> 13), 0xC2B2AE35);
      numbered[i] = ((mixed ^ (mixed >>> 16)) >>> 0) * SAMPLES + i;
    }
    const ranks = new Uint16Array(SAMPLES);
    numbered.sort().forEach((each, rank) => { ranks[each % SAMPLES] = rank; });
    orders.set(name, ranks);
  }
  return orders.get(name);
}

/* How often each sample is kept, written as one character for each, to the samples themselves. */
function kept(text) {
  const chosen = [];
  for (let i = 0; i < SAMPLES; i += 1) {
    for (let n = text.charCodeAt(i) - 48; n > 0; n -= 1) { chosen.push(i); }
  }
  return chosen;
}

/* The samples of a base input whose value is `value` and whose band is `wider` times its own. */
function baseColumn(base, value, wider, chosen) {
  const half = base.drawn ?? base.half;
  if (half === 0) { return Float64Array.of(value); }
  const ranks = order(base.name + (base.day || "")), shape = stratum(base.shape || "normal");
  const column = new Float64Array(SAMPLES + 1);
  column[0] = value;
  for (let i = 0; i < SAMPLES; i += 1) {
    const sample = base.drawn === undefined ? i : chosen[i];
    const deviation = half * shape[ranks[sample]] - (base.shift || 0);
    column[i + 1] = within(base, value + wider * deviation);
  }
  return column;
}

const drawn = new WeakMap();

/* The samples of a base input as the build has it: drawn once. */
function buildsColumn(base, chosen) {
  if (!drawn.has(base)) { drawn.set(base, baseColumn(base, base.value, 1, chosen)); }
  return drawn.get(base);
}

function within(base, value) {
  const floor = base.floor === undefined ? 0 : base.floor ?? -Infinity;
  return Math.min(Math.max(value, floor), base.ceiling ?? Infinity);
}

/* A reader's number keeps the band of what it replaces: as wide, or wider in proportion. */
function widening(value, before) {
  return before ? Math.max(1, Math.abs(value / before)) : 1;
}

/* A column about another centre; with a half width of its own it is drawn as any other input. */
function moved(name, column, own) {
  if (own.half === null) {
    const wider = widening(own.value, column[0]);
    return column.map((each) => own.value + wider * (each - column[0]));
  }
  return baseColumn({name, floor: null, half: own.half}, own.value, 1, []);
}

function ownBase(base, own, chosen) {
  if (own.half === null) {
    return baseColumn(base, own.value, widening(own.value, base.value), chosen);
  }
  return baseColumn({...base, half: own.half, drawn: undefined, shift: 0}, own.value, 1, []);
}

/* Each row of the table that applies, for each of its subjects, with its parameters bound. */
function stepsOf(chain) {
  const given = new Set(chain.bases.map((base) => base.name));
  const rows = table.rows.filter((row) =>
    row.only.every((each) => chain.conditions.includes(each)));
  const steps = rows.flatMap((row) => row.per
    ? chain.subjects.filter((each) => each.kind === row.per)
      .map((each) => bound(row, each.of, each.binds))
    : [bound(row, "", {})]);
  return steps.filter((step) => !given.has(step.name));
}

function bound(row, subject, own) {
  const binds = {...own, ...row.binds};
  const sources = row.takes.map((parameter) => [parameter, binds[parameter] || parameter]);
  return {...row, name: row.quantity + subject, sources};
}

function inOrder(steps, chain) {
  const names = steps.map((step) => step.quantity);
  const last = table.loop_last.find((each) => names.includes(each));
  const starts = Object.values(table.loop_start);
  if (last === undefined || !chain.bases.some((base) => starts.includes(base.name))) {
    return steps;
  }
  const start = names.indexOf(table.loop_first), end = names.indexOf(last) + 1;
  const loop = steps.slice(start, end);
  return [...steps.slice(0, start), ...Array(table.sweeps).fill(loop).flat(), ...steps.slice(end)];
}

function evaluate(formula, columns) {
  const result = new Float64Array(Math.max(1, ...columns.map((each) => each.length)));
  const put = columns.map((each) => each[0]);
  const varied = columns.flatMap((each, j) => each.length > 1 ? [j] : []);
  for (let i = 0; i < result.length; i += 1) {
    for (const j of varied) { put[j] = columns[j][i]; }
    result[i] = formula(...put);
  }
  return result;
}

function finite(column) {
  for (const each of column) { if (!Number.isFinite(each)) { return false; } }
  return true;
}

/* Every quantity of a chain by its name, with a reader's own numbers in place of the build's;
   what these make impossible is named. */
function workOut(chain, own) {
  const columns = new Map(), impossible = new Set();
  const chosen = chain.kept === undefined ? [] : kept(chain.kept);
  for (const base of chain.bases) {
    columns.set(base.name, own.has(base.name)
      ? ownBase(base, own.get(base.name), chosen)
      : buildsColumn(base, chosen));
  }
  for (const [unknown, start] of Object.entries(table.loop_start)) {
    if (columns.has(start) && !columns.has(unknown)) { columns.set(unknown, columns.get(start)); }
  }
  for (const step of inOrder(stepsOf(chain), chain)) {
    const taken = step.sources.map(([, name]) => columns.get(name));
    if (taken.some((each) => each === undefined)) { columns.delete(step.name); continue; }
    let result = evaluate(formulas[step.formula], taken);
    if (own.has(step.name)) { result = moved(step.name, result, own.get(step.name)); }
    if (finite(result)) {
      columns.set(step.name, result);
    } else {
      columns.delete(step.name);
      impossible.add(step.quantity);
    }
  }
  return {columns, impossible};
}

const bands = new WeakMap();

/* The ends of the 95 % band: order statistics, not interpolated. A sheet asks for them often. */
function bandOf(column) {
  if (column.length === 1) { return [column[0], column[0]]; }
  if (!bands.has(column)) {
    const sorted = column.slice(1).sort();
    bands.set(column, [sorted[table.low], sorted[SAMPLES - 1 - table.low]]);
  }
  return bands.get(column);
}
