/* Opens the numbers inside a printed working to a reader's own, and reads the working again.

   A sheet is an element with `data-chain`; each working inside it has `data-working`, the name of
   what it works out. What is printed and how it is marked: see themes/README.md. */

const island = document.getElementById("chains");
const chains = island ? JSON.parse(island.textContent) : [];
const NO_BREAK = "\u00a0";

/* Numbers as pages print them: pages/formats.py and figures/digits.py say why. */

function shifted(number, by) {
  const [digits, exponent] = String(number).split("e");
  return Number(`${digits}e${Number(exponent || 0) + by}`);
}

function rounded(value, at) {
  const steps = Math.round(shifted(Math.abs(value), -at));
  return {steps, at, negative: value < 0 && steps > 0};
}

function printed({steps, at, negative}) {
  const decimals = Math.max(0, -at);
  const digits = String(steps).padStart(decimals + 1, "0") + "0".repeat(steps ? Math.max(0, at) : 0);
  const whole = digits.slice(0, digits.length - decimals);
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, table.group);
  const fraction = decimals ? table.decimal + digits.slice(-decimals) : "";
  return (negative ? "\u2212" : "") + grouped + fraction;
}

function placeOf(value, digits) {
  return value ? Math.floor(Math.log10(Math.abs(value))) - digits + 1 : 0;
}

function exact(value, digits) {
  let {steps, at, negative} = rounded(value, placeOf(value, digits));
  while (at < 0 && steps % 10 === 0) { steps /= 10; at += 1; }
  return printed({steps, at, negative});
}

function placeOfBand(low, high) {
  const half = (high - low) / 2, first = Math.floor(Math.log10(half));
  return half / 10 ** first * 100 < 354.5 ? first - 1 : first;
}

function put(number, unit) {
  if (unit.before) { return unit.before + NO_BREAK + number; }
  return number + unit.after;
}

/* A value and its band in a unit; the band is empty where it has no width. */
function shown(reading, unit, digits) {
  const [value, low, high] = reading.map((each) => (each - unit.zero) / unit.scale);
  if (!(high > low)) { return [put(exact(value, digits), unit), ""]; }
  const at = placeOfBand(low, high);
  const ends = [printed(rounded(low, at)), printed(rounded(high, at))];
  if (!unit.before) { ends[1] = put(ends[1], unit); }
  return [put(printed(rounded(value, at)), unit), said("between", {low: ends[0], high: ends[1]})];
}

function said(key, names) {
  return table.words[key].replace(/\{(\w+)\}/g, (_, name) => names[name]);
}

/* What a reader writes: "1,600" or "1,600 ± 50"; null where it is no number. */
function numberIn(text) {
  const bare = text.replace(/\s/g, "").replace(/\u2212/g, "-");
  const point = table.decimal === "." ? "\\." : table.decimal;
  const grouped = new RegExp(`^-?\\d{1,3}(\\${table.group}\\d{3})+(${point}\\d*)?$`);
  const plain = grouped.test(bare) ? bare.replaceAll(table.group, "") : bare;
  const number = new RegExp(`^-?(\\d+(${point}\\d*)?|${point}\\d+)(e-?\\d+)?$`, "i");
  const value = number.test(plain) ? Number(plain.replace(table.decimal, ".")) : NaN;
  return Number.isFinite(value) ? value : null;
}

function ownIn(text, unit) {
  const [value, half, ...more] = text.split(/±|\+-|\+\/-/);
  const own = {value: numberIn(value), half: half === undefined ? null : numberIn(half)};
  if (own.value === null || more.length || (half !== undefined && !(own.half >= 0))) { return null; }
  own.value = own.value * unit.scale + unit.zero;
  if (own.half !== null) { own.half *= unit.scale; }
  return own;
}

/* A number of a reader's own, written for a parameter; without a value where it is no number. */
function ownEntry(text, parameter) {
  return {...ownIn(text, table.quantities[parameter].formula), text, parameter};
}

/* What a reader has written, in the unit of another formula that takes the same number. */
function inUnit({value, half, text, parameter}, unit) {
  const {scale} = table.quantities[parameter].formula;
  if (value === undefined || scale === unit.scale) { return text; }
  const [own, band] = [(value - unit.zero) / unit.scale, half / unit.scale].map((each) => exact(each, 12));
  return half === null ? own : `${own} ± ${band}`;
}

/* One sheet: its chain, its workings, and the numbers of the reader's own. */

class Sheet {
  constructor(place) {
    this.place = place;
    this.chain = chains[Number(place.dataset.chain)];
    this.bases = new Map(this.chain.bases.map((base) => [base.name, base]));
    this.steps = new Map(stepsOf(this.chain).map((step) => [step.name, step]));
    this.parameters = new Map();
    for (const {sources} of this.steps.values()) {
      for (const [parameter, name] of sources) {
        this.parameters.set(name, [...this.parameters.get(name) ?? [], parameter]);
      }
    }
    this.own = new Map();
    this.follow = () => {};
    this.fields = [];
    this.texts = [];
    const inside = [...place.querySelectorAll("[data-working]")];
    this.workings = place.dataset.working ? [place, ...inside] : inside;
    this.workings.forEach((working) => this.open(working));
    this.addLine();
    this.tell();
    const watcher = new ResizeObserver(() => this.lay());
    new Set(this.fields.map(({box}) => box)).forEach((box) => watcher.observe(box));
  }

  /* Lays each field over its number; all are measured before any is moved. */
  lay() {
    const measured = this.fields.map(({number, box}) => {
      const own = number.getBoundingClientRect(), whole = box.getBoundingClientRect();
      return {
        left: own.left - whole.left + box.scrollLeft,
        top: own.top - whole.top + box.scrollTop,
        width: own.width,
        height: own.height,
        fontSize: parseFloat(getComputedStyle(number).fontSize),
      };
    });
    this.fields.forEach(({input}, index) => {
      for (const [name, size] of Object.entries(measured[index])) {
        input.style[name] = `${size}px`;
      }
    });
  }

  /* Puts a field in the place of each number that is not a constant of nature. */
  open(working) {
    const step = this.steps.get(working.dataset.working);
    if (!step) { this.openGiven(working, working.dataset.working); return; }
    for (const [parameter, name] of step.sources) {
      for (const number of working.querySelectorAll(`mn.${parameter}`)) {
        this.fields.push(this.field(number, parameter, name));
      }
      for (const cell of working.querySelectorAll(`[data-input=${parameter}]`)) {
        this.texts.push({element: cell, text: cell.textContent, print: () => this.cell(parameter, name)});
      }
    }
    this.reprint(working, this.prints(step));
    for (const element of working.querySelectorAll("[data-builds]")) {
      this.texts.push({element, text: null});
    }
  }

  reprint(working, prints) {
    for (const [mark, print] of Object.entries(prints)) {
      for (const element of working.querySelectorAll(mark)) {
        const text = element.textContent;
        this.texts.push({element, text, print: () => print(text)});
      }
    }
  }

  /* What was given and is no result, as a temperature from a log, follows a number written for it. */
  openGiven(working, name) {
    if (!this.bases.has(name)) { return; }
    const {page, digits} = table.quantities[name];
    const own = (text, none, print) => {
      if (!this.own.has(name)) { return text; }
      return this.known(name) ? print(...shown(this.reading(name), page, digits)) : none;
    };
    this.reprint(working, {
      "[data-value]": (text) => own(text, said("no_number", {}), (value) => value),
      "[data-after]": (text) => own(text, "", (_, band) => this.after(band, "this_is_yours")),
    });
  }

  after(band, how) { return `${band && `, ${said("banded", {band})}`}, ${said(how, {})}`; }

  field(number, parameter, name) {
    const input = document.createElement("input");
    const {words, formula} = table.quantities[parameter];
    const unit = formula.after.trim();
    input.className = "own";
    input.value = number.textContent;
    input.setAttribute("aria-label", unit ? said("label", {what: words, unit}) : words);
    input.inputMode = "decimal";
    input.autocomplete = "off";
    input.spellcheck = false;
    // To a screen reader nothing inside an element of mathematics can be worked, so the field
    // stands beside it and is laid over its number.
    const box = number.closest("math").parentElement;
    box.classList.add("opened");
    number.classList.add("open");
    box.append(input);
    const field = {input, number, box, parameter, name, text: input.value};
    input.addEventListener("input", () => { number.textContent = input.value; this.lay(); });
    input.addEventListener("change", () => this.take(field));
    return field;
  }

  /* What is printed of a working's result, by where it stands. */
  prints(step) {
    const unit = table.quantities[step.quantity];
    const whole = () => shown(this.reading(step.name), unit.page, unit.digits);
    return {
      "mn.result": () => this.known(step.name) ? bare(whole()[0]) : "?",
      "[data-value]": () => this.known(step.name) ? whole()[0] : said("no_number", {}),
      "[data-after]": () => this.known(step.name) ? this.after(whole()[1], "by_yours") : "",
      "[data-limit]": () => this.limit(step),
    };
  }

  known(name) { return !this.cause && this.worked.columns.has(name); }

  /* The central value and the ends of the band; of a base input its band as it was given. */
  reading(name) {
    const column = this.worked.columns.get(name), base = this.bases.get(name);
    if (!base) { return [column[0], ...bandOf(column)]; }
    const own = this.own.get(name);
    const half = own ? own.half ?? base.half * widening(own.value, base.value) : base.half;
    return [column[0], within(base, column[0] - half), within(base, column[0] + half)];
  }

  cell(parameter, name) {
    if (!this.known(name)) { return name === this.wrong ? said("no_number", {}) : null; }
    const {page, digits} = table.quantities[parameter];
    const [value, band] = shown(this.reading(name), page, digits);
    const whole = band ? `${value} ${said("in_cell", {band})}` : value;
    return this.own.has(name) ? `${whole}, ${table.words.this_is_yours}` : whole;
  }

  limit(step) {
    const limit = table.limits[step.quantity];
    if (!limit || !this.known(step.name)) { return ""; }
    const [value, low, high] = this.reading(step.name).map((each) => limit.sign * each);
    const worst = limit.sign > 0 ? high : low;
    if (value > limit.at * limit.sign) { return table.words.over; }
    const near = value > limit.near * limit.sign || worst > limit.at * limit.sign;
    return near ? table.words.near : table.words.within;
  }

  /* A reader has written in a field. The build's number written again is no number of their own,
     but for one that their other numbers have moved. */
  take(field) {
    const text = field.input.value.trim();
    const others = this.own.size > Number(this.own.has(field.name));
    const builds = text === field.text && (this.bases.has(field.name) || !others);
    if (text === "" || builds) {
      this.own.delete(field.name);
    } else {
      this.own.set(field.name, ownEntry(text, field.parameter));
    }
    this.read();
  }

  restore() {
    this.own.clear();
    this.read();
    this.fields[0].input.focus();
  }

  /* Why there is no number, in words; empty where there is one. */
  because() {
    for (const [name, own] of this.own) {
      this.wrong = name;
      const {words, formula} = table.quantities[own.parameter];
      const named = {what: words, given: own.text};
      if (own.value === undefined) { return said("no_such_number", named); }
      const base = this.bases.get(name);
      if (base && own.value <= 0 && !table.may_be_nothing.includes(own.parameter)) {
        return said("above_zero", named);
      }
      const [low, high] = this.range(name, base);
      if (own.value < low || own.value > high) {
        const [from, to] = [low, high].map((each) => shown([each, each, each], formula, 6)[0]);
        const key = low === -Infinity ? "at_most" : high === Infinity ? "at_least" : "in_range";
        return said(key, {...named, low: from, high: to});
      }
    }
    this.wrong = null;
    return "";
  }

  /* Where every formula that takes a number holds, and what the number itself can be. */
  range(name, base) {
    let low = -Infinity, high = base ? base.ceiling ?? Infinity : Infinity;
    for (const step of this.steps.values()) {
      for (const [parameter, source] of step.sources) {
        const valid = source === name && step.valid[parameter];
        if (valid) { low = Math.max(low, valid[0]); high = Math.min(high, valid[1]); }
      }
    }
    return [low, high];
  }

  read() {
    this.cause = this.because();
    if (!this.cause) {
      this.worked = workOut(this.chain, this.own);
      const lost = this.workings.map((each) => this.steps.get(each.dataset.working))
        .find((step) => step && !this.worked.columns.has(step.name));
      if (lost) {
        const quantity = [...this.worked.impossible][0] ?? lost.quantity;
        this.cause = said("impossible", {what: table.quantities[quantity].words});
      }
    }
    this.fields.forEach((field) => this.refill(field));
    this.texts.forEach(({element, text, print}) => {
      if (!print) { element.hidden = this.own.size > 0; return; }
      const now = this.own.size ? print() : text;
      if (now !== null && element.textContent !== now) { element.textContent = now; }
    });
    this.tell();
    this.lay();
    this.follow();
  }

  refill({input, number, name, parameter, text}) {
    const own = this.own.get(name), {formula, digits} = table.quantities[parameter];
    let now = text;
    if (own) { now = inUnit(own, formula); } else if (this.own.size && this.known(name)) {
      now = bare(shown(this.reading(name), formula, digits)[0]);
    }
    if (input.value !== now) { input.value = now; }
    if (number.textContent !== now) { number.textContent = now; }
    input.classList.toggle("yours", Boolean(own));
  }

  /* Says whose numbers these are, and why there are none. */
  tell() {
    const own = this.own.size > 0;
    const yours = own ? `${table.words.yours} ${said("which", {numbers: this.listed()})}` : "";
    this.status.textContent = own && this.cause || yours;
    this.place.classList.toggle("retold", own);
    this.place.dataset.told = this.status.textContent;
    this.line.classList.toggle("told", own);
    this.back.hidden = !own;
    this.fields.forEach(({input, name}) => {
      input.setAttribute("aria-invalid", String(own && name === this.wrong));
    });
  }

  /* The reader's numbers in words: on another sheet they may stand in no field. */
  listed() {
    return [...this.own].map(([name, {text, parameter}]) => {
      const {words, formula} = table.quantities[parameter], [, of] = name.split(" of ");
      const what = of ? said("of", {what: words, of: of.replaceAll("-", " ")}) : words;
      return `${what} ${text}${formula.after}`;
    }).join("; ");
  }

  addLine() {
    this.line = document.createElement("div");
    this.line.className = "own-line";
    this.status = document.createElement("p");
    this.status.setAttribute("role", "status");
    this.back = document.createElement("button");
    this.back.type = "button";
    this.back.textContent = table.words.back;
    this.back.addEventListener("click", () => this.restore());
    this.line.append(this.status, this.back);
    const builds = this.place.querySelector("[data-builds]");
    if (builds) { builds.before(this.line); } else { this.place.append(this.line); }
  }
}

/* The number of a printed quantity without its unit. */
function bare(text) { return text.split(NO_BREAK)[0]; }

const sheets = [...document.querySelectorAll("[data-chain]")].map((place) => new Sheet(place));
