// Sends what waits on this phone, in order and each form once: its id is the entry's id, so that a
// form whose answer was lost is sent again and still makes one entry. Runs in pages and in the
// service worker.
// eslint-disable-next-line no-unused-vars
const Outbox = (function () {
  "use strict";

  const TOKEN = "form-token";
  const PATIENCE_MS = 20000;
  const PATIENCE_FILES_MS = 90000;
  const ANSWER_MOST = 200000;
  const PENDING = ["waits", "sending", "sign-in"];
  const LATER = [408, 425, 429];

  // What a form sends, without the token, which is fetched anew when it is sent.
  function fields(data) {
    return [...data.entries()].filter(([name]) => name !== TOKEN);
  }

  function value(all, name) {
    const found = all.find(([each]) => each === name);
    return found ? found[1] : null;
  }

  // A press that stores nothing: a look at what is known, or one of the readings offered.
  function asksOnly(all) {
    return value(all, "step") === "look" || all.some(([name]) => name.startsWith("use:"));
  }

  // What the server's answer makes of a form.
  function verdict(response) {
    if (response.type === "opaqueredirect" || response.redirected) {
      return "sent";
    }
    if (response.status === 401) {
      return "sign-in";
    }
    if (LATER.includes(response.status) || response.status >= 500) {
      return "waits";
    }
    return response.ok ? "asked" : "refused";
  }

  function body(form) {
    const data = form.multipart ? new FormData() : new URLSearchParams();
    form.fields.forEach(([name, each]) => data.append(name, each));
    return data;
  }

  // Who is signed in, with a token for forms: null without a connection, no member for a stranger.
  async function sender() {
    try {
      const response = await fetch("/me/form-token", {
        cache: "no-store",
        signal: AbortSignal.timeout(PATIENCE_MS),
      });
      if (response.status === 401) {
        return { member: null };
      }
      return response.ok ? await response.json() : null;
    } catch {
      return null;
    }
  }

  // One form under its own lock, which ends with the tab or worker that holds it.
  function alone(id, work) {
    return navigator.locks.request("emberwell-form-" + id, { ifAvailable: true }, (lock) =>
      lock ? work() : null,
    );
  }

  async function send(form, token) {
    try {
      const response = await fetch(form.action, {
        method: "POST",
        body: body(form),
        headers: { "X-Form-Token": token },
        signal: AbortSignal.timeout(form.multipart ? PATIENCE_FILES_MS : PATIENCE_MS),
      });
      const state = verdict(response);
      return {
        state: state === "asked" ? "refused" : state,
        link: state === "sent" ? response.url : null,
        status: response.status,
        answer: state === "sent" ? null : (await response.text()).slice(0, ANSWER_MOST),
      };
    } catch {
      return { state: "waits", link: null, status: 0, answer: null };
    }
  }

  // What was sent needs to be known, not kept.
  function settled(form, came) {
    const now = { ...form, ...came, since: Date.now() };
    return came.state === "sent" ? { ...now, fields: [] } : now;
  }

  function sendAlone(id, token) {
    return alone(id, async function () {
      const form = await Kept.change(id, (now) =>
        now && PENDING.includes(now.state) ? { ...now, state: "sending" } : undefined,
      );
      if (!form || form.state !== "sending") {
        return form || null;
      }
      const came = await send(form, token);
      return Kept.change(id, (now) => (now ? settled(now, came) : undefined));
    });
  }

  async function mayGo(form) {
    const before = form.after && (await Kept.form(form.after));
    return !before || before.state === "sent";
  }

  async function pending() {
    return (await Kept.all()).filter((form) => PENDING.includes(form.state));
  }

  async function needSignIn(forms) {
    for (const form of forms) {
      await Kept.change(form.id, (now) =>
        now && now.state === "waits" ? { ...now, state: "sign-in" } : undefined,
      );
    }
  }

  async function drainAlone() {
    const waiting = await pending();
    const who = waiting.length ? await sender() : null;
    if (!who) {
      return;
    }
    if (!who.member) {
      await needSignIn(waiting);
      return;
    }
    for (const form of waiting.filter((each) => each.member === who.member)) {
      if (await mayGo(form)) {
        const now = await sendAlone(form.id, who.token);
        if (now && now.state === "waits") {
          return;
        }
      }
    }
  }

  // Sends all that waits; a second call meanwhile, in whatever tab, does nothing.
  function drain() {
    return navigator.locks.request("emberwell-outbox", { ifAvailable: true }, (lock) =>
      lock ? drainAlone() : undefined,
    );
  }

  return {
    fields: fields,
    value: value,
    asksOnly: asksOnly,
    verdict: verdict,
    sender: sender,
    alone: alone,
    send: send,
    settled: settled,
    pending: pending,
    drain: drain,
  };
})();
