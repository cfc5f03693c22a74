// Drags the corners of a grid into place on its photo. What is sent are the number fields, which this fills.
(function () {
  "use strict";

  const stage = document.querySelector("[data-corners]");
  if (!stage) {
    return;
  }
  const form = stage.closest("form");
  const outline = stage.querySelector("polygon");
  const NAMES = ["topLeft", "topRight", "bottomRight", "bottomLeft"];
  const STEP = 0.25;
  const LEAP = 5;
  const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  const handles = new Map();

  function field(name, axis) {
    return form.elements[name + "." + axis];
  }

  function at(name) {
    return ["x", "y"].map(function (axis) {
      return parseFloat(field(name, axis).value) || 0;
    });
  }

  function put(name, x, y) {
    const inside = function (share) {
      return String(Math.round(Math.max(0, Math.min(100, share)) * 100) / 100);
    };
    field(name, "x").value = inside(x);
    field(name, "y").value = inside(y);
    field(name, "x").dispatchEvent(new Event("change", { bubbles: true }));
  }

  function paint() {
    NAMES.forEach(function (name) {
      const [x, y] = at(name);
      const handle = handles.get(name);
      handle.style.left = x + "%";
      handle.style.top = y + "%";
      handle.setAttribute(
        "aria-label",
        stage.dataset[name] + ": " + x + " % from the left, " + y + " % from the top. Arrow keys move it."
      );
    });
    outline.setAttribute(
      "points",
      NAMES.map(function (name) {
        return at(name).join(",");
      }).join(" ")
    );
  }

  function handle(name) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "corner";
    button.id = "corner-" + name;
    stage.append(button);
    handles.set(name, button);
    let grip = null;
    button.addEventListener("pointerdown", function (event) {
      const [x, y] = at(name);
      grip = { x: x, y: y, left: event.clientX, top: event.clientY };
      button.setPointerCapture(event.pointerId);
    });
    // the corner follows the finger from where it was: nobody has to cover it
    button.addEventListener("pointermove", function (event) {
      if (grip) {
        const box = stage.getBoundingClientRect();
        put(
          name,
          grip.x + ((event.clientX - grip.left) / box.width) * 100,
          grip.y + ((event.clientY - grip.top) / box.height) * 100
        );
      }
    });
    ["pointerup", "pointercancel"].forEach(function (end) {
      button.addEventListener(end, function () {
        grip = null;
      });
    });
    button.addEventListener("keydown", function (event) {
      const arrow = ARROWS[event.key];
      if (arrow) {
        const by = event.shiftKey ? LEAP : STEP;
        const [x, y] = at(name);
        put(name, x + arrow[0] * by, y + arrow[1] * by);
        event.preventDefault();
      }
    });
  }

  NAMES.forEach(handle);
  form.addEventListener("change", paint);
  form.addEventListener("input", paint);
  window.addEventListener("pageshow", paint);
  form.classList.add("dragging-corners");
  paint();
})();
