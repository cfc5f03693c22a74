// What every page does about the phone it is on: installs the service worker, says when there is no
// connection and what waits, sends it, and clears all at sign-out.
/* global Kept, Outbox */
(function () {
  "use strict";

  const AGAIN_MS = 30000;
  const DAY_MS = 24 * 3600 * 1000;
  const root = document.documentElement.dataset;
  const strip = document.getElementById("offline-strip");
  const waits = document.getElementById("waits");
  const fromPhone = Boolean(strip && "kept" in strip.dataset);
  let unsent = null;

  function sayConnection() {
    if (fromPhone) {
      return;
    }
    strip.hidden = navigator.onLine;
    strip.textContent = navigator.onLine ? "" : "No connection. What you send now waits on this phone.";
  }

  async function count() {
    const mine = (await Kept.all()).filter((form) => form.member === root.member);
    unsent = mine.filter((form) => form.state !== "sent").length;
    const waiting = mine.filter((form) => !["sent", "draft"].includes(form.state)).length;
    waits.hidden = !waiting;
    waits.firstElementChild.textContent = waiting + (waiting === 1 ? " form waits" : " forms wait") + " on this phone";
  }

  async function forgetSent() {
    const old = (await Kept.all()).filter(
      (form) => form.state === "sent" && Date.now() - (form.since || form.at) > DAY_MS,
    );
    old.forEach((form) => Kept.change(form.id, () => null));
  }

  async function drain() {
    await Outbox.drain();
    if ((await Outbox.pending()).some((form) => form.member === root.member)) {
      setTimeout(drain, AGAIN_MS);
    }
  }

  // Whoever signs out leaves nothing on the phone, so they are asked while something is unsent.
  function askBeforeSignOut(event) {
    const form = event.target;
    if (new URL(form.action).pathname !== "/sign-out" || unsent === 0) {
      return;
    }
    event.preventDefault();
    // so that a later press is not taken for a second tap
    event.stopImmediatePropagation();
    count()
      .catch(() => {})
      .then(() => !unsent || window.confirm(unsentWords()))
      .then((yes) => yes && form.submit());
  }

  function unsentWords() {
    const what = unsent === 1 ? "1 form on this phone is" : unsent + " forms on this phone are";
    return what + " not sent yet. Signing out deletes what is kept here. Sign out?";
  }

  async function install() {
    // whoever opens a card by a link may never have been here before
    const first = !navigator.serviceWorker.controller;
    const worker = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
    await navigator.serviceWorker.ready;
    if (!fromPhone && worker.active) {
      worker.active.postMessage({ member: root.member || "-" });
      if (first) {
        worker.active.postMessage({ opened: location.href });
      }
    }
  }

  // Parts of a page that cannot be fetched are asked for as a page, which may be kept.
  document.addEventListener("htmx:sendError", function (event) {
    const sent = event.detail.requestConfig;
    if (sent && sent.verb === "get" && sent.boosted) {
      location.assign(sent.path);
    }
  });

  if (strip) {
    sayConnection();
    window.addEventListener("online", sayConnection);
    window.addEventListener("offline", sayConnection);
  }
  if (!navigator.serviceWorker || !navigator.locks) {
    return;
  }
  window.addEventListener("submit", askBeforeSignOut, true);
  if (root.member && waits) {
    Kept.onChange(count);
    count().then(forgetSent).catch(() => {});
    window.addEventListener("online", drain);
    drain().catch(() => {});
  }
  if (document.readyState === "complete") {
    install().catch(() => {});
  } else {
    window.addEventListener("load", () => install().catch(() => {}));
  }
})();
