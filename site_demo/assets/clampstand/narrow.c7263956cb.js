(function () {
  "use strict";
  function hasWords(row, typed) {
    var known = [row.textContent, row.dataset.topic, row.dataset.kit, row.dataset.words].join(" ").toLowerCase()
      .split(/[^a-z0-9\u00c0-\u024f\u0370-\u03ff]+/);
    return typed.toLowerCase().split(/[^a-z0-9\u00c0-\u024f\u0370-\u03ff]+/).every(function (part) {
      return known.some(function (word) {
        return word.indexOf(part) === 0 || (word.length > 3 && part.indexOf(word) === 0);
      });
    });
  }

  function matches(row, chosen, time) {
    var age = Number(chosen.get("age"));
    return ["subject", "hazard", "room", "topic", "kit", "source", "today"].every(function (name) {
      var wanted = chosen.get(name);
      return !wanted || row.dataset[name].split("|").indexOf(wanted) >= 0;
    }) && hasWords(row, chosen.get("words") || "")
      && (!age || (age >= Number(row.dataset.youngest) && age <= Number(row.dataset.oldest)))
      && (!time || Number(row.dataset.minutes) <= time);
  }

  function chosenIn(form) {
    var chosen = new URLSearchParams();
    new FormData(form).forEach(function (value, name) { if (value) { chosen.set(name, value); } });
    return chosen;
  }

  function narrow(form, table, keep) {
    var chosen = chosenIn(form), rows = table.tBodies[0].rows, left = 0, shortest = Infinity;
    Array.prototype.forEach.call(rows, function (row) {
      row.hidden = !matches(row, chosen, Number(chosen.get("time")));
      left += row.hidden ? 0 : 1;
      if (matches(row, chosen, 0)) { shortest = Math.min(shortest, Number(row.dataset.minutes)); }
    });
    form.querySelector("output").textContent = left + " of " + rows.length
      + (left || shortest === Infinity ? "" : "; the shortest of the kind takes " + shortest + " min");
    if (keep) {
      history.replaceState(null, "", location.pathname + (String(chosen) ? "?" + chosen : "") + location.hash);
    }
  }

  function begin(form) {
    var table = document.getElementById(form.dataset.narrow);
    new URLSearchParams(location.search).forEach(function (value, name) {
      var field = form.elements.namedItem(name);
      if (field) { field.value = value; }
    });
    var more = form.querySelector("details");
    more.open = matchMedia("(min-width: 45em)").matches
      || Array.prototype.some.call(more.querySelectorAll("select"), function (field) { return field.value; });
    form.hidden = false;
    narrow(form, table, false);
    form.addEventListener("input", function () { narrow(form, table, true); });
    form.addEventListener("submit", function (event) { event.preventDefault(); });
    form.addEventListener("reset", function () { setTimeout(function () { narrow(form, table, true); }); });
  }

  document.querySelectorAll("form[data-narrow]").forEach(begin);
})();
