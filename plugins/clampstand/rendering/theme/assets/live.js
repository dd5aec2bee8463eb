/* Live panels. The formulae above were compiled from the handbook's own; this part only reads inputs, keeps
   their bounds, rounds for display, and puts words where a number would be none. It never says that something
   is allowed. */

/* A node of a panel: a number, something read from an input, something that goes with a choice, or a formula. */
function worth(node, given) {
  if (typeof node === "number") { return node; }
  if ("read" in node) { return (given[node.read] - node.less) * node.times; }
  if ("pick" in node) { return node.from[given[node.pick]]; }
  var values = node["with"].map(function (inner) { return worth(inner, given); });
  return formulae[node.of].apply(null, values) * node.times;
}

/* Decimal digits, rounded on the decimal so that no float noise moves them: the same as the built page's. */
function digits(value, figures, towards) {
  if (value === 0) { return "0"; }
  var parts = value.toExponential(11).split("e");
  var negative = parts[0].charAt(0) === "-";
  var all = parts[0].replace("-", "").replace(".", "");
  var power = Number(parts[1]);
  var kept = all.slice(0, figures).split("").map(Number);
  var rest = all.slice(figures);
  if (leansUp(kept[figures - 1], rest, negative, towards)) {
    var place = figures - 1;
    while (place >= 0 && kept[place] === 9) { kept[place] = 0; place -= 1; }
    if (place >= 0) { kept[place] += 1; } else { kept.unshift(1); power += 1; }
  }
  return (negative ? "\u2212" : "") + placed(kept.join(""), power, figures);
}

function leansUp(last, rest, negative, towards) {
  if (/^0*$/.test(rest)) { return false; }
  if (towards !== "nearest") { return (towards === "up") !== negative; }
  if (/^50*$/.test(rest)) { return last % 2 === 1; }
  return rest.charAt(0) >= "5";
}

/* Digits with their point, and thin spaces from five digits before it. A carry keeps its extra nought. */
function placed(text, power, figures) {
  var after = Math.max(0, text.length - 1 - power);
  if (power < 0) { text = "0".repeat(-power) + text; power = 0; after = text.length - 1; }
  while (text.length < power + 1) { text += "0"; }
  var whole = text.slice(0, power + 1);
  if (whole.length >= 5) { whole = whole.replace(/\B(?=([0-9]{3})+$)/g, "\u202f"); }
  return after > 0 ? whole + "." + text.slice(power + 1) : whole;
}

/* A value in the unit that suits its size. */
function shown(value, result) {
  var chosen = result.units[0];
  result.units.forEach(function (one) {
    if (Math.abs(value * one[1]) >= 1 - 0.5 * Math.pow(10, -result.figures)) { chosen = one; }
  });
  return digits(value * chosen[1], result.figures, result.towards) + (chosen[0] ? "\u00a0" + chosen[0] : "");
}

/* Whether a limit is broken; a value equal to its edge but for float noise counts as equal. */
function breaks(value, limit) {
  var noise = Math.abs(limit.edge) * 1e-9;
  var past = limit.below ? value < limit.edge - noise : value > limit.edge + noise;
  return past || (limit.itself && Math.abs(value - limit.edge) <= noise);
}

/* What an input stands at: {value, said}, or {wrong} in words. Days are counted in UTC. */
function read(field, ask) {
  if (ask.type === "choice") {
    return { value: field.selectedIndex, said: field.options[field.selectedIndex].text };
  }
  var value = ask.type === "day" ? Date.parse(field.value) / 864e5 : field.valueAsNumber;
  if (!isFinite(value) || value < ask.low || value > ask.high) {
    return { wrong: ask.label + " must be " + ask.between + "." };
  }
  return { value: value, said: ask.type === "day" ? field.value : field.value + ask.unit };
}

function paragraph(box, words, name) {
  var made = document.createElement("p");
  made.className = name;
  made.textContent = words;
  box.appendChild(made);
}

function refresh(form, panel) {
  var given = {}, said = [], words = [], wrong = [];
  panel.inputs.forEach(function (ask) {
    var field = form.elements.namedItem(ask.name), found = read(field, ask);
    field.setAttribute("aria-invalid", found.wrong ? "true" : "false");
    if (found.wrong) { wrong.push(found.wrong); return; }
    given[ask.name] = found.value;
    said.push(ask.label.charAt(0).toLowerCase() + ask.label.slice(1) + " " + found.said);
    (ask.limits || []).forEach(function (limit) { if (breaks(found.value, limit)) { words.push(ask.label + ": " + limit.words); } });
  });
  panel.results.forEach(function (result, place) {
    var output = form.querySelectorAll("output")[place], value = wrong.length ? NaN : worth(result.value, given);
    output.textContent = isFinite(value) ? shown(value, result) : "no number";
    if (!isFinite(value)) { return; }
    result.limits.forEach(function (limit) { if (breaks(value, limit)) { words.push(result.title + ": " + limit.words); } });
  });
  var box = form.querySelector(".live__words");
  box.textContent = "";
  wrong.forEach(function (one) { paragraph(box, one, "live__wrong"); });
  words.forEach(function (one) { paragraph(box, one + ".", "live__over"); });
  if (!wrong.length) { paragraph(box, "For " + said.join("; ") + ".", "live__for"); }
}

function begin(box) {
  var form = box.querySelector("form"), panel = JSON.parse(box.getAttribute("data-live"));
  form.hidden = false;
  form.addEventListener("input", function () { refresh(form, panel); });
  form.addEventListener("reset", function () { setTimeout(function () { refresh(form, panel); }, 0); });
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  refresh(form, panel);
}

/* The whole class's kit for another class: every size was worked out when the page was built. */
function beginTotals(box) {
  var form = box.querySelector("form"), sizes = JSON.parse(box.getAttribute("data-totals"));
  var field = form.elements.namedItem("class"), cells = form.querySelectorAll("output");
  function refreshTotals() {
    var texts = sizes[field.selectedIndex];
    cells.forEach(function (cell, place) { cell.textContent = texts[place]; });
  }
  form.hidden = false;
  form.addEventListener("input", refreshTotals);
  refreshTotals();
}

if (typeof document !== "undefined") {
  document.querySelectorAll("[data-live]").forEach(begin);
  document.querySelectorAll("[data-totals]").forEach(beginTotals);
}
