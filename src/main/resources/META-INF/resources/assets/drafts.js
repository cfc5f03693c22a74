// Keeps what is typed into a form with data-keep on this phone until it was sent, and puts it back.
// The attribute says at which address the form stands; its hidden field id is what it is sent under.
/* global Kept */
(function () {
  "use strict";

  const PAUSE_MS = 300;
  const WANTED = /^#draft=(.+)$/;
  const root = document.documentElement.dataset;
  const strip = document.getElementById("offline-strip");
  const fromPhone = Boolean(strip && "kept" in strip.dataset);
  const forms = root.member ? [...document.querySelectorAll("form[data-keep]")].filter((form) => asks(form) || idField(form)) : [];
  const waits = new Map();

  function idField(form) {
    return form.querySelector("input[name=id]");
  }

  // A form that only asks has one draft, until its answer is there: that has it all in its address.
  function idOf(form) {
    return asks(form) ? root.member + form.dataset.keep : idField(form).value;
  }

  function asks(form) {
    return form.method === "get";
  }

  function fields(form, submitter) {
    return [...new FormData(form, submitter).entries()].filter(
      ([name, value]) => name !== "form-token" && !(value instanceof File && !value.size),
    );
  }

  // handed: it was sent, and nothing was typed since
  function asRecord(form, submitter, handed) {
    const all = fields(form, submitter);
    const about = ["title", "material", "text"].map((name) => all.find((each) => each[0] === name));
    const file = all.find((each) => each[1] instanceof File);
    const first = about.find((each) => each && each[1]);
    return {
      id: idOf(form),
      member: root.member,
      handle: root.handle,
      page: form.dataset.keep,
      action: new URL(form.action).pathname,
      title: (form.dataset.called || document.querySelector("h1").textContent).trim(),
      about: String(first ? first[1] : file ? file[1].name : "").slice(0, 80),
      at: Date.now(),
      fields: all,
      multipart: form.enctype === "multipart/form-data",
      handed: Boolean(handed),
    };
  }

  function save(form, submitter, handed) {
    clearTimeout(waits.get(form));
    waits.delete(form);
    // a browser that keeps nothing (or whose disk is full) still sends
    return Kept.draft(asRecord(form, submitter, handed)).catch(() => {});
  }

  function later(form) {
    clearTimeout(waits.get(form));
    waits.set(
      form,
      setTimeout(() => save(form), PAUSE_MS),
    );
  }

  function put(form, record) {
    const left = new Map();
    record.fields.forEach(([name, value]) => left.set(name, [...(left.get(name) || []), value]));
    for (const control of form.elements) {
      if (!control.name || control.name === "form-token" || control.type === "submit") {
        continue;
      }
      const values = left.get(control.name) || [];
      const before = control.type === "file" ? "" : control.value + control.checked;
      if (control.type === "file") {
        putFiles(control, values);
      } else if (control.type === "checkbox" || control.type === "radio") {
        control.checked = values.includes(control.value);
      } else if (values.length) {
        control.value = values.shift();
      }
      if (before !== control.value + control.checked) {
        shown(control);
      }
    }
    form.dispatchEvent(new CustomEvent("kept:restored", { bubbles: true, detail: record.fields }));
  }

  function putFiles(control, values) {
    const files = new DataTransfer();
    values.filter((each) => each instanceof File).forEach((each) => files.items.add(each));
    if (files.files.length) {
      control.files = files.files;
    }
  }

  // What was folded away is seen, and scripts hear of it as if it were typed.
  function shown(control) {
    const fold = control.closest("details");
    if (fold && control.type !== "hidden" && control.value) {
      fold.open = true;
    }
    control.dispatchEvent(new Event("change", { bubbles: true }));
  }

  function say(form, record) {
    const box = document.createElement("div");
    box.className = "box-note kept-line";
    box.setAttribute("role", "status");
    const line = document.createElement("p");
    const at = new Date(record.at).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
    line.textContent = "Kept on this phone, not sent. From " + at + ".";
    const discard = document.createElement("button");
    discard.type = "button";
    discard.className = "secondary";
    discard.textContent = "Discard";
    discard.addEventListener("click", async function () {
      clearTimeout(waits.get(form));
      await Kept.change(record.id, () => null);
      history.replaceState(null, "", location.pathname + location.search);
      location.reload();
    });
    box.append(line, discard);
    form.prepend(box);
  }

  async function wanted(form) {
    const asked = WANTED.exec(location.hash);
    if (asked) {
      const one = await Kept.form(decodeURIComponent(asked[1]));
      return one && one.member === root.member && one.page === form.dataset.keep ? one : null;
    }
    if (location.search) {
      // the address itself says what stands in the form
      return null;
    }
    const all = (await Kept.all()).filter(
      (each) => each.member === root.member && each.page === form.dataset.keep,
    );
    return all.filter((each) => Kept.EDITED.includes(each.state)).pop() || null;
  }

  async function begin(form) {
    const own = await Kept.form(idOf(form));
    if (asks(form) && location.search && own) {
      await Kept.change(own.id, () => null);
    }
    if (form.querySelector("[data-as-typed]")) {
      // shown again by the server with everything but the files, and with those it has parked
      if (own && own.member === root.member) {
        [...form.elements]
          .filter((control) => control.type === "file" && !("parks" in control.dataset))
          .forEach((control) =>
            putFiles(
              control,
              own.fields.filter(([name]) => name === control.name).map(([, value]) => value),
            ),
          );
      }
      return;
    }
    const record = await wanted(form);
    if (record) {
      put(form, record);
      say(form, record);
    } else if (fromPhone || (own && !Kept.EDITED.includes(own.state))) {
      anew(form);
    }
  }

  // A form that comes up a second time is another entry.
  function anew(form) {
    if (!asks(form)) {
      idField(form).value = crypto.randomUUID();
    }
  }

  forms.forEach(function (form) {
    form.addEventListener("input", () => later(form));
    form.addEventListener("change", () => later(form));
    form.addEventListener("submit", function (event) {
      if (!event.defaultPrevented) {
        save(form, event.submitter, true);
      }
    });
  });

  // A link to the form in which it waits is none to what was stored.
  function leadsTo(id) {
    const named = JSON.stringify(id);
    return (
      location.pathname.includes(id) ||
      document.querySelector(`main a[href*=${named}]:not([href*="#draft="]), main [id$=${named}]`)
    );
  }

  // Where no worker saw it being sent, a page that leads to what was stored tells.
  async function forgetStored() {
    if (document.querySelector("[data-as-typed]")) {
      return;
    }
    const own = (kept) => kept && kept.member === root.member && kept.handed && Kept.EDITED.includes(kept.state);
    for (const { id } of (await Kept.all()).filter(own)) {
      if (leadsTo(id)) {
        await Kept.change(id, (now) => (own(now) ? null : undefined));
      }
    }
  }

  async function start() {
    if (root.member) {
      await forgetStored();
      await Promise.all(forms.map(begin));
    }
  }

  start().catch(() => {});

  // A page that is left has no time to write; the worker has.
  document.addEventListener("visibilitychange", function () {
    const worker = navigator.serviceWorker && navigator.serviceWorker.controller;
    if (document.visibilityState === "hidden") {
      [...waits.keys()].forEach(function (form) {
        if (worker) {
          worker.postMessage({ draft: asRecord(form) });
        }
        save(form);
      });
    }
  });

  window.addEventListener("pageshow", function (event) {
    if (event.persisted) {
      forms.forEach(async function (form) {
        const own = await Kept.form(idOf(form));
        if (own && own.state === "sent") {
          anew(form);
        }
      });
    }
  });
})();
