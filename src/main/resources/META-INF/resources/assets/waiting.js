// The pages /waiting and /offline: what waits on this phone, and which pages are kept here.
/* global Kept, Outbox */
(function () {
  "use strict";

  const root = document.documentElement.dataset;
  const strip = document.getElementById("offline-strip");
  const fromPhone = "kept" in strip.dataset;
  const list = document.getElementById("waiting-list");
  const pages = document.getElementById("kept-pages");
  const STATES = {
    draft: "Draft, not sent",
    waits: "Waits for a connection",
    sending: "Being sent",
    "sign-in": "Sign in to send it",
    refused: "Not accepted",
    sent: "Sent",
  };

  function make(tag, text, name) {
    const made = document.createElement(tag);
    made.textContent = text || "";
    if (name) {
      made.className = name;
    }
    return made;
  }

  function link(text, href, name) {
    const made = make("a", text, name);
    made.href = href;
    return made;
  }

  function button(text, press) {
    const made = make("button", text, "secondary");
    made.type = "button";
    made.addEventListener("click", press);
    return made;
  }

  function when(at) {
    return new Date(at).toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
  }

  // The worker knows who was here last where the page itself comes from the phone.
  async function member() {
    return root.member || (fromPhone ? await Kept.fact("member") : null) || null;
  }

  // What the server said is wrong, from the page it answered with.
  function reasons(form) {
    if (!form.answer) {
      return [];
    }
    const page = new DOMParser().parseFromString(form.answer, "text/html");
    const said = page.querySelectorAll(
      "#error-summary li, main .box-danger p:first-of-type, main .box-warn[role=alert] li, main .field-error",
    );
    const all = said.length ? [...said] : [...page.querySelectorAll("main h1, main h1 + p")];
    return [...new Set(all.map((each) => each.textContent.trim()))].filter(Boolean);
  }

  async function open(form) {
    await Kept.change(form.id, (now) => (now ? { ...now, state: "draft" } : undefined));
    location.assign(form.page + "#draft=" + encodeURIComponent(form.id));
  }

  async function discard(form) {
    const all = await Kept.all();
    for (const each of all.filter((one) => one.id === form.id || one.after === form.id)) {
      await Kept.change(each.id, () => null);
    }
  }

  async function sendNow() {
    await Outbox.drain();
    await show();
  }

  // A photo for a report that is not sent yet: it goes after it, under the report's own id.
  function photo(form) {
    const label = make("label", "Add a photo", "button secondary");
    const field = make("input", "", "visually-hidden");
    field.type = "file";
    field.accept = "image/jpeg,image/png,image/webp";
    field.addEventListener("change", async function () {
      const file = field.files[0];
      const id = crypto.randomUUID();
      const action = "/reports/" + form.id + "/photos";
      const fields = [
        ["id", id],
        ["parking", id],
        ["photo1", file],
      ];
      await Kept.change(id, () => ({
        id: id,
        after: form.id,
        member: form.member,
        handle: form.handle,
        page: "/reports/" + form.id,
        action: action,
        title: "Photo of " + (form.about || form.title),
        about: file.name,
        at: Date.now(),
        fields: fields,
        multipart: true,
        state: "waits",
      }));
      await sendNow();
    });
    label.append(field);
    return label;
  }

  function isReport(form) {
    return form.action === "/post" || form.action.endsWith("/repeat");
  }

  function buttons(form) {
    const row = make("p", "", "row");
    if (form.state === "sent") {
      if (form.link) {
        row.append(link("See it", form.link, "button secondary"));
      }
      row.append(button("Remove from this list", () => discard(form)));
      return row;
    }
    if (form.state === "sign-in") {
      row.append(link("Sign in", "/sign-in?to=/waiting", "button"));
    } else if (form.state === "waits") {
      row.append(button("Send now", sendNow));
    }
    if (form.state !== "sending") {
      // a photo of a report that is not there yet has no page of its own
      if (!form.after) {
        row.append(button(form.state === "refused" ? "Open it in its form" : "Open", () => open(form)));
      }
      if (isReport(form) && form.state !== "draft") {
        row.append(photo(form));
      }
      row.append(button("Discard", () => discard(form)));
    }
    return row;
  }

  function item(form) {
    const made = make("li", "", "card");
    made.dataset.state = form.state;
    const about = form.about && form.about !== form.title ? ": " + form.about : "";
    made.append(make("h3", form.title + about));
    made.append(make("p", STATES[form.state] + ". " + when(form.since || form.at) + "."));
    const wrong = form.state === "refused" ? reasons(form) : [];
    if (wrong.length) {
      const why = make("ul");
      wrong.forEach((each) => why.append(make("li", each)));
      made.append(why);
    }
    made.append(buttons(form));
    return made;
  }

  // Somebody whose session ended is told that something is here, not what.
  function others(all) {
    const handles = [...new Set(all.map((form) => form.handle).filter(Boolean))];
    return handles.map(function (handle) {
      const made = make("li", "", "card");
      made.append(make("p", "Something of " + handle + " waits here. Sign in as " + handle + " to send it."));
      made.append(link("Sign in", "/sign-in?to=/waiting", "button"));
      return made;
    });
  }

  async function show() {
    const who = await member();
    const all = (await Kept.all()).filter((form) => !form.quiet && (form.state !== "sent" || form.link));
    const rows = who
      ? all.filter((form) => form.member === who).map(item)
      : others(all.filter((form) => form.state !== "sent"));
    list.replaceChildren(...rows);
    document.getElementById("nothing-waits").hidden = rows.length > 0;
  }

  async function showPages() {
    const who = await member();
    const rows = [];
    for (const whose of who ? ["by-link", who] : ["by-link"]) {
      rows.push(...(await keptRows(await caches.open("pages-" + whose))));
    }
    pages.replaceChildren(...rows.reverse());
    pages.closest("section").hidden = rows.length === 0;
  }

  async function keptRows(cache) {
    const rows = [];
    for (const request of await cache.keys()) {
      const kept = await cache.match(request, { ignoreVary: true });
      const url = new URL(request.url);
      const title = decodeURIComponent(kept.headers.get("Kept-Title") || "");
      if (title && !["/offline", "/waiting"].includes(url.pathname)) {
        const row = make("li");
        const sheet = url.pathname.endsWith("/sheet") ? " (sheet)" : "";
        row.append(link(title + sheet, url.pathname + url.search, "tap"));
        row.append(make("span", " " + when(Number(kept.headers.get("Kept-At"))), "soft"));
        rows.push(row);
      }
    }
    return rows;
  }

  document.querySelectorAll("[data-scripted]").forEach((each) => (each.hidden = false));
  const left = document.getElementById("signed-out");
  if (left && location.search === "?signed-out") {
    left.hidden = false;
  }
  if (list) {
    Kept.onChange(() => show().catch(() => {}));
    show().catch(() => {});
  }
  if (pages && window.caches) {
    showPages().catch(() => {});
  }
})();
