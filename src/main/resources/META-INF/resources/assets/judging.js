// Judging a burned grid by taps or keys. What is sent are the fields of the plain form, which this only paints.
(function () {
  "use strict";

  const form = document.querySelector("form[data-judging]");
  if (!form) {
    return;
  }
  const ROUND = ["", "right", "too-little", "too-much"];
  const SHAPES = { right: "●", "too-little": "▽", "too-much": "△" };
  const KEYS = { r: "right", l: "too-little", m: "too-much", n: "" };
  const best = form.elements.best;
  const marking = document.getElementById("mark-best");
  const count = document.getElementById("judged-count");
  const buttons = new Map();
  let choosingBest = false;

  function fields() {
    return Array.from(form.querySelectorAll("select[data-cell]"));
  }

  function worded(select) {
    return select.options[select.selectedIndex].text.toLowerCase();
  }

  function field(button) {
    return button.previousElementSibling.querySelector("select");
  }

  function place(select) {
    return select.dataset.cell;
  }

  // The plain field stays what is sent; the button shows it.
  function dress(select) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "cell";
    button.id = "cell-" + place(select).replace(".", "-");
    button.tabIndex = -1;
    const label = select.closest("label");
    label.hidden = true;
    label.after(button);
    // so that an error leads to what can be seen
    const id = select.id;
    select.removeAttribute("id");
    label.parentElement.id = id;
    buttons.set(place(select), button);
    button.addEventListener("click", function () {
      turnTo(select);
      if (choosingBest) {
        markBest(select);
        choose(false);
      } else {
        judge(select, ROUND[(ROUND.indexOf(select.value) + 1) % ROUND.length]);
      }
    });
    button.addEventListener("focus", function () {
      turnTo(select);
    });
  }

  function tell(field) {
    field.dispatchEvent(new Event("change", { bubbles: true }));
  }

  function judge(select, effect) {
    select.value = effect;
    if (effect !== "right" && best.value === place(select)) {
      best.value = "";
    }
    tell(select);
  }

  function markBest(select) {
    const was = best.value === place(select);
    select.value = "right";
    best.value = was ? "" : place(select);
    tell(select);
  }

  function choose(on) {
    choosingBest = on;
    marking.setAttribute("aria-pressed", String(on));
  }

  // One cell is reached by Tab, the others by arrows; what is said of it stands below the grid.
  function turnTo(select) {
    buttons.forEach(function (button, at) {
      button.tabIndex = at === place(select) ? 0 : -1;
    });
    form.querySelectorAll("[data-detail]").forEach(function (detail) {
      detail.hidden = detail.dataset.detail !== place(select);
    });
  }

  function move(select, down, across) {
    const [row, column] = place(select).split(".").map(Number);
    for (let step = 1; step < 400; step++) {
      const next = buttons.get(row + step * down + "." + (column + step * across));
      if (next) {
        next.focus();
        return;
      }
    }
  }

  function paint() {
    let judged = 0;
    fields().forEach(function (select) {
      const button = buttons.get(place(select));
      const effect = select.value;
      const isBest = effect === "right" && best.value === place(select);
      const word = isBest ? "best" : worded(select);
      judged += effect ? 1 : 0;
      button.className = "cell" + (effect ? " cell-" + effect : "") + (isBest ? " cell-best" : "");
      button.setAttribute(
        "aria-label",
        select.closest("label").firstElementChild.textContent + ": " + worded(select) + (isBest ? ", best" : "")
      );
      button.replaceChildren();
      if (effect) {
        const shape = document.createElement("b");
        shape.className = "shape";
        shape.textContent = SHAPES[effect];
        button.append(shape);
      }
      const small = document.createElement("small");
      small.textContent = effect ? word : select.dataset.dose;
      button.append(small);
    });
    count.textContent = judged + " of " + buttons.size + " judged";
  }

  form.addEventListener("keydown", function (event) {
    const cell = event.target.closest("button.cell");
    if (!cell || event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const select = field(cell);
    const key = event.key.toLowerCase();
    if (key in KEYS) {
      judge(select, KEYS[key]);
    } else if (key === "b") {
      markBest(select);
    } else if (key === "arrowup") {
      move(select, -1, 0);
    } else if (key === "arrowdown") {
      move(select, 1, 0);
    } else if (key === "arrowleft") {
      move(select, 0, -1);
    } else if (key === "arrowright") {
      move(select, 0, 1);
    } else {
      return;
    }
    event.preventDefault();
  });

  marking.addEventListener("click", function () {
    choose(!choosingBest);
  });
  // whoever else fills the form, such as a kept draft, says so by an event
  form.addEventListener("change", paint);
  form.addEventListener("input", paint);
  window.addEventListener("pageshow", paint);

  fields().forEach(dress);
  form.classList.add("judging-by-taps");
  form.querySelector(".cell-details").open = true;
  marking.hidden = false;
  paint();
  const named = document.getElementById(location.hash.slice(1));
  const first = named && named.matches("button.cell") ? named : buttons.values().next().value;
  if (first) {
    turnTo(field(first));
    if (first === named) {
      first.focus();
    }
  }
})();
