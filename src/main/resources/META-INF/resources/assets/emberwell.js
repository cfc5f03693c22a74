// Everything works without this; it only saves steps.
(function () {
  "use strict";

  // After a refused form the list of errors is what matters first.
  function focusMarked() {
    const marked = document.querySelector("[data-focus]");
    if (marked) {
      marked.focus();
    }
  }

  // A facet form sends itself when a box is ticked; its button is for those without scripts.
  document.addEventListener("change", function (event) {
    const form = event.target.closest("form[data-auto]");
    if (form) {
      form.requestSubmit();
    }
  });

  // Copies a line of settings; where the browser lets nobody, the line is marked to be copied by hand.
  document.addEventListener("click", function (event) {
    const button = event.target.closest("[data-copy]");
    if (!button) {
      return;
    }
    const done = function () {
      button.textContent = "Copied";
    };
    const byHand = function () {
      const field = document.createElement("textarea");
      field.value = button.dataset.copy;
      document.body.append(field);
      field.select();
      if (document.execCommand("copy")) {
        done();
      }
      field.remove();
      button.focus();
    };
    if (navigator.clipboard) {
      navigator.clipboard.writeText(button.dataset.copy).then(done, byHand);
    } else {
      byHand();
    }
  });

  // A second tap on a slow connection must not post twice.
  document.addEventListener("submit", function (event) {
    const form = event.target;
    if (form.method !== "post") {
      return;
    }
    if (form.dataset.sent) {
      event.preventDefault();
      return;
    }
    form.dataset.sent = "yes";
    setTimeout(function () {
      delete form.dataset.sent;
    }, 8000);
  });

  window.addEventListener("pageshow", function () {
    document.querySelectorAll("form[data-sent]").forEach(function (form) {
      delete form.dataset.sent;
    });
  });

  // Results are exchanged in place: what was unfolded stays so, the focus stays, the count is said.
  const unfolded = new Map();
  let focused = "";
  let place = 0;
  document.addEventListener("htmx:beforeSwap", function () {
    unfolded.clear();
    document.querySelectorAll("details[id]").forEach(function (each) {
      unfolded.set(each.id, each.open);
    });
    focused = document.activeElement.id;
    place = document.activeElement.getBoundingClientRect().top;
  });
  document.addEventListener("htmx:afterSwap", function () {
    unfolded.forEach(function (open, id) {
      const each = document.getElementById(id);
      if (each) {
        each.open = open;
      }
    });
    const before = focused && document.getElementById(focused);
    if (before && before !== document.activeElement) {
      before.focus({ preventScroll: true });
    }
    // what was tapped stays under the finger, whatever grew above it
    if (before) {
      window.scrollBy({ top: before.getBoundingClientRect().top - place, behavior: "instant" });
    }
    const said = document.getElementById("said");
    const found = document.querySelector(".found-line");
    if (said && found) {
      said.textContent = found.textContent;
    }
  });

  // Days begin where the reader is.
  document.querySelectorAll("input[data-zone]").forEach(function (each) {
    each.value = Intl.DateTimeFormat().resolvedOptions().timeZone || "";
  });

  // What is written as a day by UTC is told by the reader's clock, in the same words.
  const months = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split(" ");
  const midnight = function (when) {
    return new Date(when.getFullYear(), when.getMonth(), when.getDate());
  };
  document.querySelectorAll("time[data-day]").forEach(function (each) {
    const when = new Date(each.dateTime);
    const day = when.getDate() + " " + months[when.getMonth()] + " " + when.getFullYear();
    if (each.dataset.day === "date") {
      each.textContent = day;
      return;
    }
    // a day on which the clock is changed has 23 or 25 hours
    const ago = Math.round((midnight(new Date()) - midnight(when)) / 86400000);
    each.textContent = ago === 0 ? "today" : ago === 1 ? "yesterday" : "on " + day;
  });

  document.documentElement.classList.add("scripted");
  focusMarked();
})();
