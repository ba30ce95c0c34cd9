/* Adds to the page of changes a choice of two episodes and the table of what they differ in. The page
   is whole without it: it lists what every episode changed. */
(function () {
  "use strict";

  var place = document.getElementById("choice");
  var data = JSON.parse(document.getElementById("compared").textContent);
  var said = place.dataset;

  function element(name, text, attributes) {
    var made = document.createElement(name);
    made.textContent = text || "";
    Object.entries(attributes || {}).forEach(function (pair) { made.setAttribute(pair[0], pair[1]); });
    return made;
  }

  // Before the first change after one state a subject stood as that change says, and after the last
  // change until the other state as that one says. What was done and undone is no difference.
  function differences(start, end) {
    var found = new Map();
    data.rows.forEach(function (row) {
      var number = row[0], key = row[1];
      if (number <= start || number > end) { return; }
      if (!found.has(key)) { found.set(key, { key: key, before: row[2] }); }
      found.get(key).after = row[3];
    });
    return Array.from(found.values()).filter(function (each) {
      if (data.subjects[each.key][3] > start) { each.before = ""; }
      return each.before !== each.after;
    });
  }

  function rowOf(each) {
    var subject = data.subjects[each.key];
    var head = element("th", subject[1] ? "" : subject[0], { scope: "row" });
    if (subject[1]) { head.append(element("a", subject[0], { href: subject[1] })); }
    if (subject[2]) { head.append(" ", element("span", subject[2], { "class": "fate" })); }
    var row = element("tr");
    row.append(head,
      element("td", each.before, { "data-label": said.before }),
      element("td", each.after, { "data-label": said.after }));
    return row;
  }

  function tableOf(start, end) {
    var rows = differences(start, end);
    if (!rows.length) { return element("p", said.nothing); }
    var table = element("table", "", { "class": "changes stack" });
    var heads = element("tr");
    [said.what, said.before, said.after].forEach(function (text) {
      heads.append(element("th", text, { scope: "col" }));
    });
    var body = element("tbody");
    body.append.apply(body, rows.map(rowOf));
    var head = element("thead");
    head.append(heads);
    table.append(element("caption", caption(start, end)), head, body);
    return table;
  }

  function caption(start, end) {
    var names = new Map(data.points);
    return said.caption.replace("{first}", names.get(start)).replace("{last}", names.get(end));
  }

  function choice(label, chosen) {
    var select = element("select");
    data.points.forEach(function (point) { select.append(new Option(point[1], point[0])); });
    select.value = chosen;
    var around = element("label", label + " ");
    around.append(select);
    return { select: select, label: around };
  }

  var from = choice(said.from, data.points[0][0]);
  var until = choice(said.until, data.points[data.points.length - 1][0]);
  var button = element("button", said.compare, { type: "button" });
  var shown = element("div", "", { role: "status" });

  function show() {
    var ends = [Number(from.select.value), Number(until.select.value)];
    shown.replaceChildren(tableOf(Math.min.apply(null, ends), Math.max.apply(null, ends)));
  }

  button.addEventListener("click", show);
  var line = element("p", "", { "class": "choice" });
  line.append(from.label, " ", until.label, " ", button);
  place.replaceChildren(line, shown);
})();
