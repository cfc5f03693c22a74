// Photos in forms: seen as soon as they are chosen, made smaller before they are sent, and several
// chosen at once spread over the fields. A form that comes back from this phone shows those that the
// server has parked for it.
(function () {
  "use strict";

  const SIDE = 1600;
  const QUALITY = 0.9;
  const SEEN = 96;

  function forget(slot) {
    slot.querySelector("[data-photo-seen]").replaceChildren();
  }

  function drawn(bitmap, width, height) {
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(width));
    canvas.height = Math.max(1, Math.round(height));
    canvas.getContext("2d").drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    return canvas;
  }

  // The same picture, upright and no larger than it is kept; as it was where that is not smaller.
  async function smaller(file, bitmap) {
    const scale = Math.min(1, SIDE / Math.max(bitmap.width, bitmap.height));
    const canvas = drawn(bitmap, bitmap.width * scale, bitmap.height * scale);
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
    return blob && blob.size < file.size ? new File([blob], file.name, { type: blob.type }) : file;
  }

  // What cannot be read here is sent as it is: the server says what is wrong with it.
  async function shown(slot, file) {
    const bitmap = await createImageBitmap(file).catch(() => null);
    if (!bitmap) {
      return file;
    }
    const canvas = drawn(bitmap, (SEEN * bitmap.width) / bitmap.height, SEEN);
    canvas.setAttribute("role", "img");
    canvas.setAttribute("aria-label", "Chosen photo: " + file.name);
    slot.querySelector("[data-photo-seen]").append(canvas);
    return smaller(file, bitmap);
  }

  function put(control, files) {
    const all = new DataTransfer();
    files.forEach((file) => all.items.add(file));
    control.files = all.files;
  }

  // One to each field, in their order; what has no field of its own stays with the last.
  function spread(control) {
    const others = [...control.form.querySelectorAll("input[data-parks][multiple]")];
    const free = others.filter((each) => each !== control && !each.files.length);
    const left = [...control.files];
    const takers = [control, ...free].slice(0, left.length);
    takers.forEach(function (taker, place) {
      put(taker, place === takers.length - 1 ? left : left.splice(0, 1));
      const fold = taker.closest("[data-photo-slot]").parentElement.closest("details");
      if (fold) {
        fold.open = true;
      }
    });
    return takers;
  }

  async function chosen(control) {
    for (const taker of spread(control)) {
      const slot = taker.closest("[data-photo-slot]");
      forget(slot);
      for (const each of slot.querySelectorAll("input[data-parks]")) {
        put(each, await Promise.all([...each.files].map((file) => shown(slot, file))));
      }
    }
    // what is kept on this phone is what will be sent
    control.dispatchEvent(new Event("input", { bubbles: true }));
  }

  document.addEventListener("change", function (event) {
    if (event.isTrusted && event.target.matches("input[data-parks]")) {
      chosen(event.target);
    }
  });

  // Their words were typed into fields that this page did not have when they came back.
  document.addEventListener("kept:restored", async function (event) {
    const place = event.target.querySelector("[data-parked]");
    const fields = new Map(event.detail || []);
    const parking = fields.get("parking");
    if (!place || !parking) {
      return;
    }
    const answer = await fetch("/photos/parked?parking=" + encodeURIComponent(parking)).catch(() => null);
    if (!answer || !answer.ok) {
      return;
    }
    place.innerHTML = await answer.text();
    place.querySelectorAll("input").forEach(function (control) {
      if (control.type === "checkbox") {
        control.checked = fields.has(control.name);
      } else if (fields.has(control.name)) {
        control.value = fields.get(control.name);
      }
    });
  });
})();
