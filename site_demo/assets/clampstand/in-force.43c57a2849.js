(function () {
  "use strict";

  var AN_ID = /^[0-9a-f-]{1,13}$/;
  var form = document.querySelector("form[data-cards-asked]");
  if (!form) { return; }
  var answers = document.querySelectorAll("[data-cards-answer]");
  var rows = document.querySelectorAll(".cards-in-force tbody tr");

  function linesWhere(matches) {
    return Array.prototype.filter.call(rows, function (row) { return matches(row.id); });
  }

  function lead(link, found) {
    var there = found.length === 1 ? found[0].querySelector("a") : null;
    link.textContent = there ? there.textContent : link.dataset.cardsSeveral;
    link.href = there ? there.href : "#practicals";
  }

  function say(kind, id, found) {
    answers.forEach(function (answer) {
      answer.hidden = answer.dataset.cardsAnswer !== kind;
      answer.querySelector("[data-cards-id]").textContent = id;
      var link = answer.querySelector("[data-cards-link]");
      if (link && found.length) { lead(link, found); }
    });
  }

  function look() {
    var id = location.hash.slice(1).toLowerCase();
    if (!AN_ID.test(id)) { return; }
    var same = linesWhere(function (other) { return other === id; });
    var older = linesWhere(function (other) { return other.slice(0, 5) === id.slice(0, 5); });
    form.elements.card.value = id;
    say(same.length ? "in-force" : older.length ? "old" : "unknown", id, same.length ? same : older);
  }
  function asPrinted(typed) {
    var signs = typed.toLowerCase().replace(/[^0-9a-z]/g, "");
    return signs.slice(0, 4) + "-" + signs.slice(4);
  }

  form.hidden = false;
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    var id = asPrinted(form.elements.card.value);
    if (AN_ID.test(id)) { location.hash = id; } else { say("unknown", form.elements.card.value, []); }
  });
  window.addEventListener("hashchange", look);
  look();
})();
