/* Adds to pages that are whole without it: buttons that copy a parts list to the clipboard, a choice
   of the episode that a list is shown as at, and a shade where something goes on behind its edge. */
(function () {
  "use strict";

  function element(name, text) {
    var made = document.createElement(name);
    made.textContent = text || "";
    return made;
  }

  // The list as text, without the pieces that belong to the other choice.
  function listed(template, whole) {
    var copy = template.content.cloneNode(true);
    var other = whole ? "[data-when=unasked]" : "[data-when=asked]";
    copy.querySelectorAll(other).forEach(function (piece) { piece.remove(); });
    return copy.textContent;
  }

  // Where the clipboard is not open to scripts, a selection can still be copied.
  function copySelected(text) {
    var box = element("textarea");
    box.value = text;
    box.readOnly = true;
    document.body.append(box);
    box.select();
    var done = document.execCommand("copy");
    box.remove();
    return done ? Promise.resolve() : Promise.reject(new Error("not copied"));
  }

  function copyText(text) {
    if (!navigator.clipboard) { return copySelected(text); }
    return navigator.clipboard.writeText(text).catch(function () { return copySelected(text); });
  }

  function addButtons(list) {
    var told = element("p");
    told.setAttribute("role", "status");
    var templates = list.querySelectorAll("template");
    list.querySelectorAll("[data-button]").forEach(function (name) {
      var button = element("button", name.textContent);
      var template = templates[name.closest("td").cellIndex - 1];
      button.type = "button";
      button.setAttribute("aria-label", name.dataset.button);
      button.addEventListener("click", function () {
        told.textContent = "";
        copyText(listed(template, name.dataset.whole !== undefined)).then(
          function () { told.textContent = list.dataset.copied; },
          function () { told.textContent = list.dataset.failed; }
        ).then(function () { button.focus(); });
      });
      name.replaceWith(button);
    });
    list.append(told);
  }

  // Rows stand in the list from the episode `data-from` until the episode `data-until`.
  function showAsAt(number) {
    document.querySelectorAll("[data-from]").forEach(function (row) {
      var until = row.dataset.until;
      row.hidden = number !== "" &&
        (Number(row.dataset.from) > Number(number) || (until && Number(until) <= Number(number)));
    });
  }

  function addChoice(place) {
    var select = element("select");
    select.append(new Option(place.dataset.all, ""));
    place.dataset.episodes.split("|").forEach(function (pair) {
      var cut = pair.indexOf("=");
      select.append(new Option(pair.slice(cut + 1), pair.slice(0, cut)));
    });
    // Paper has no select: a line of its own says which list is printed.
    var told = element("p");
    told.setAttribute("role", "status");
    select.addEventListener("change", function () {
      showAsAt(select.value);
      told.textContent = select.value && place.dataset.told + " " + select.selectedOptions[0].text;
    });
    var label = element("label", place.dataset.label + " ");
    label.append(select);
    place.replaceChildren(label);
    place.after(told);
  }

  // What is wider than its place goes on behind its edge, which its style shows.
  var watcher = new ResizeObserver(function (entries) {
    entries.forEach(function (entry) {
      var box = entry.target;
      box.classList.toggle("goes-on", box.scrollWidth > box.clientWidth);
    });
  });

  document.querySelectorAll(".wide").forEach(function (box) { watcher.observe(box); });
  document.querySelectorAll(".copies").forEach(addButtons);
  document.querySelectorAll("[data-episodes]").forEach(addChoice);
})();
