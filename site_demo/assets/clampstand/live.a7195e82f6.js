(function () {
"use strict";
var formulae = Object.create(null);
function of_counting_count_relative_uncertainty(x_counts, x_one) {
  return Math.sqrt((x_one / x_counts));
}
formulae["counting.count_relative_uncertainty"] = of_counting_count_relative_uncertainty;
function of_counting_count_uncertainty(x_counts, x_one) {
  return Math.sqrt((x_counts * x_one));
}
formulae["counting.count_uncertainty"] = of_counting_count_uncertainty;
function of_counting_expected_count_rate(x_activity, x_per_decay, x_share, x_efficiency, x_background) {
  return ((((x_activity * x_per_decay) * x_share) * x_efficiency) + x_background);
}
formulae["counting.expected_count_rate"] = of_counting_expected_count_rate;
function of_counting_net_rate(x_gross_counts, x_gross_time, x_background_counts, x_background_time) {
  return ((x_gross_counts / x_gross_time) - (x_background_counts / x_background_time));
}
formulae["counting.net_rate"] = of_counting_net_rate;
function of_counting_net_rate_uncertainty(x_gross_counts, x_gross_time, x_background_counts, x_background_time, x_one) {
  return Math.sqrt((((x_gross_counts * x_one) / Math.pow(x_gross_time, 2.0)) + ((x_background_counts * x_one) / Math.pow(x_background_time, 2.0))));
}
formulae["counting.net_rate_uncertainty"] = of_counting_net_rate_uncertainty;
function of_counting_time_for_counts(x_counts, x_rate) {
  return (x_counts / x_rate);
}
formulae["counting.time_for_counts"] = of_counting_time_for_counts;
function of_counting_window_share(x_distance, x_radius) {
  var x_slant = Math.sqrt((Math.pow(x_distance, 2.0) + Math.pow(x_radius, 2.0)));
  return (Math.pow(x_radius, 2.0) / ((2.0 * x_slant) * (x_slant + x_distance)));
}
formulae["counting.window_share"] = of_counting_window_share;
function of_decay_share_left(x_half_life, x_elapsed) {
  return Math.exp((((-0.6931471805599453) * x_elapsed) / x_half_life));
}
formulae["decay.share_left"] = of_decay_share_left;
function of_decay_activity_after(x_activity, x_half_life, x_elapsed) {
  return (x_activity * of_decay_share_left(x_half_life, x_elapsed));
}
formulae["decay.activity_after"] = of_decay_activity_after;
function of_dose_ambient_dose_rate(x_constant, x_activity, x_distance) {
  return ((x_constant * x_activity) / Math.pow(x_distance, 2.0));
}
formulae["dose.ambient_dose_rate"] = of_dose_ambient_dose_rate;
function of_dose_background_time(x_amount, x_background) {
  return (x_amount / x_background);
}
formulae["dose.background_time"] = of_dose_background_time;
function of_dose_dose(x_rate, x_time) {
  return (x_rate * x_time);
}
formulae["dose.dose"] = of_dose_dose;
function of_electricity_charge_stored(x_capacitance, x_voltage) {
  return (x_capacitance * x_voltage);
}
formulae["electricity.charge_stored"] = of_electricity_charge_stored;
function of_electricity_current_through(x_voltage, x_series_resistance, x_load_resistance) {
  return (x_voltage / (x_series_resistance + x_load_resistance));
}
formulae["electricity.current_through"] = of_electricity_current_through;
function of_electricity_energy_stored(x_capacitance, x_voltage) {
  return ((x_capacitance * Math.pow(x_voltage, 2.0)) / 2.0);
}
formulae["electricity.energy_stored"] = of_electricity_energy_stored;
function of_electricity_peak_of(x_rms) {
  return (x_rms * Math.pow(2.0, 0.5));
}
formulae["electricity.peak_of"] = of_electricity_peak_of;
function of_geometry_disc_area(x_diameter) {
  return (0.7853981633974483 * Math.pow(x_diameter, 2.0));
}
formulae["geometry.disc_area"] = of_geometry_disc_area;
function of_heat_energy_supplied(x_power, x_time) {
  return (x_power * x_time);
}
formulae["heat.energy_supplied"] = of_heat_energy_supplied;
function of_heat_temperature_rise(x_energy, x_mass, x_specific_heat) {
  return (x_energy / (x_mass * x_specific_heat));
}
formulae["heat.temperature_rise"] = of_heat_temperature_rise;
function of_ionisation_saturation_current(x_activity, x_energy, x_share, x_w, x_per_decay, x_elementary_charge) {
  return (((((x_activity * x_per_decay) * x_share) * x_energy) * x_elementary_charge) / x_w);
}
formulae["ionisation.saturation_current"] = of_ionisation_saturation_current;
function of_light_fringe_spacing(x_wavelength, x_screen_distance, x_slit_separation) {
  return ((x_wavelength * x_screen_distance) / x_slit_separation);
}
formulae["light.fringe_spacing"] = of_light_fringe_spacing;
function of_room_air_fraction_after(x_start, x_outdoor, x_release, x_room_volume, x_air_changes, x_time) {
  return ((x_outdoor + ((x_start - x_outdoor) * Math.exp(((-x_air_changes) * x_time)))) + ((x_air_changes * x_time) < 1e-07 ? ((x_release * x_time) / x_room_volume) : ((x_release * (1.0 - Math.exp(((-x_air_changes) * x_time)))) / (x_air_changes * x_room_volume))));
}
formulae["room_air.fraction_after"] = of_room_air_fraction_after;
function of_room_air_rise_in_closed_room(x_mass, x_gas_density, x_room_volume) {
  return (x_mass / (x_gas_density * x_room_volume));
}
function of_room_air_fraction_in_closed_room(x_outdoor, x_mass, x_gas_density, x_room_volume) {
  return (x_outdoor + of_room_air_rise_in_closed_room(x_mass, x_gas_density, x_room_volume));
}
formulae["room_air.fraction_in_closed_room"] = of_room_air_fraction_in_closed_room;
function of_room_air_gas_release(x_mass_rate, x_gas_density) {
  return (x_mass_rate / x_gas_density);
}
formulae["room_air.gas_release"] = of_room_air_gas_release;
function worth(node, given) {
  if (typeof node === "number") { return node; }
  if ("read" in node) { return (given[node.read] - node.less) * node.times; }
  if ("pick" in node) { return node.from[given[node.pick]]; }
  var values = node["with"].map(function (inner) { return worth(inner, given); });
  return formulae[node.of].apply(null, values) * node.times;
}
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
function placed(text, power, figures) {
  var after = Math.max(0, text.length - 1 - power);
  if (power < 0) { text = "0".repeat(-power) + text; power = 0; after = text.length - 1; }
  while (text.length < power + 1) { text += "0"; }
  var whole = text.slice(0, power + 1);
  if (whole.length >= 5) { whole = whole.replace(/\B(?=([0-9]{3})+$)/g, "\u202f"); }
  return after > 0 ? whole + "." + text.slice(power + 1) : whole;
}
function shown(value, result) {
  var chosen = result.units[0];
  result.units.forEach(function (one) {
    if (Math.abs(value * one[1]) >= 1 - 0.5 * Math.pow(10, -result.figures)) { chosen = one; }
  });
  return digits(value * chosen[1], result.figures, result.towards) + (chosen[0] ? "\u00a0" + chosen[0] : "");
}
function breaks(value, limit) {
  var noise = Math.abs(limit.edge) * 1e-9;
  var past = limit.below ? value < limit.edge - noise : value > limit.edge + noise;
  return past || (limit.itself && Math.abs(value - limit.edge) <= noise);
}
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
}());
