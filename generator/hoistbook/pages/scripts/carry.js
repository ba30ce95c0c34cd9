/* A reader's own numbers go along to the other sheets of the chain in the fragment of the links that
   lead there, "#boost=1.2+bar": nothing is stored, nothing is sent to a host, a sheet works from
   disk, and its address can be passed on with the numbers in it. */

const onward = [...document.querySelectorAll("[data-onward] a")]
  .map((link) => ({link, bare: link.getAttribute("href")}));

/* The unit stands in the address, so that a number is never taken for one in another. */
function unitIn(parameter) {
  return table.quantities[parameter].formula.after.replaceAll(NO_BREAK, " ");
}

function carried(own) {
  const numbers = [...own].map(([name, {text, parameter}]) => [name, text + unitIn(parameter)]);
  return numbers.length ? `#${new URLSearchParams(numbers)}` : "";
}

/* An anchor of the page has no "=" in it. */
function arrived() { return location.hash.includes("="); }

/* What the address says, of what this chain has; each is looked over as if it were typed here. */
function ownInAddress(sheet) {
  const own = new Map();
  for (const [name, written] of new URLSearchParams(location.hash.slice(1))) {
    const takers = sheet.parameters.get(name);
    if (!takers || !written.trim()) { continue; }
    const parameter = takers.find((each) => written.endsWith(unitIn(each)));
    const end = written.length - (parameter ? unitIn(parameter).length : 0);
    own.set(name, ownEntry(written.slice(0, end), parameter ?? takers[0]));
  }
  return own;
}

/* Puts the numbers into the address of the sheet and of those that it leads to. */
function carry(sheet) {
  const numbers = carried(sheet.own);
  for (const {link, bare} of onward) { link.setAttribute("href", bare + numbers); }
  if (numbers || arrived()) {
    history.replaceState(null, "", location.href.split("#")[0] + numbers);
  }
}

/* An anchor that was followed has put itself in the place of the numbers. */
function arrive(sheet) {
  if (arrived()) {
    sheet.own = ownInAddress(sheet);
    sheet.read();
  } else {
    carry(sheet);
  }
}

if (onward.length) {
  const [sheet] = sheets;
  sheet.follow = () => carry(sheet);
  for (const event of ["load", "hashchange"]) { addEventListener(event, () => arrive(sheet)); }
}
