// The service worker: which pages open without a connection, and forms that find none.
// BUILD is written before this by /sw.js: the program's stamp and the frame's assets.
/* global BUILD, Kept, Outbox, Pages */
(function () {
  "use strict";

  const ASSETS = "assets-" + BUILD.stamp;
  const IN_JAR = /^\/(assets|webjars)\//;
  const SLOW_MS = 4000;
  const PATIENCE_MS = 60000;
  const ANSWER_MS = 20000;
  const ANSWER_FILES_MS = 90000;

  // Forms that wait for a connection: each carries a client's id, under which it is stored once.
  const ID = "[0-9a-f-]{36}";
  const POSTS = new RegExp(
    `^/(post|reports/${ID}/(repeat|photos|comments)|talk/${ID}/photos|ask/new|ask/${ID}/answers|notices/new` +
      `|grids|grids/${ID}/(results|photo)|samples/new|lots/new|recipes/new|eyewear/new|rooms/new|fixtures/new)$`,
  );

  function within(promise, ms) {
    return Promise.race([
      promise,
      new Promise(function (_, reject) {
        setTimeout(() => reject(new Error("no answer")), ms);
      }),
    ]);
  }

  self.addEventListener("install", function (event) {
    self.skipWaiting();
    event.waitUntil(
      caches.open(ASSETS).then(async function (cache) {
        await cache.addAll(BUILD.assets);
        // as a stranger sees them, for whoever has no page of their own here
        for (const path of Pages.SHELLS) {
          await cache.put(path, await fetch(path, { credentials: "omit" }));
        }
      }),
    );
  });

  self.addEventListener("activate", function (event) {
    event.waitUntil(
      (async function () {
        for (const name of await caches.keys()) {
          if (name.startsWith("assets-") && name !== ASSETS) {
            await caches.delete(name);
          }
        }
        await Pages.sweep();
        await self.clients.claim();
      })(),
    );
  });

  self.addEventListener("fetch", function (event) {
    const request = event.request;
    const url = new URL(request.url);
    if (url.origin !== self.location.origin) {
      return;
    }
    if (request.method === "GET") {
      answerGet(event, request, url);
    } else if (request.method === "POST" && request.mode === "navigate" && ours(request)) {
      answerPost(event, request, url);
    }
  });

  // Forms of other sites go their own way, past which our guard sees where they come from.
  function ours(request) {
    return request.referrer.startsWith(self.location.origin + "/");
  }

  function answerGet(event, request, url) {
    if (IN_JAR.test(url.pathname)) {
      event.respondWith(asset(request));
      return;
    }
    const kind = Pages.kindOf(url);
    const boosted = request.headers.has("HX-Boosted");
    const part = kind && (kind.files || (kind.searches && boosted));
    if (request.mode === "navigate" || part) {
      event.respondWith(page(event, request, kind));
    }
  }

  // The name of an asset holds a hash of its bytes; while developing it does not.
  async function asset(request) {
    const cache = await caches.open(ASSETS);
    const kept = await cache.match(request, { ignoreVary: true });
    if (kept && BUILD.stamp !== "dev") {
      return kept;
    }
    const came = await fetch(request).catch(() => null);
    if (came && came.ok) {
      return came;
    }
    // a page kept before an update names a file that is no more: what replaced it does
    const name = nameOf(request);
    const other = (await cache.keys()).find((each) => nameOf(each) === name);
    return (other && (await cache.match(other, { ignoreVary: true }))) || came || Response.error();
  }

  function nameOf(request) {
    return new URL(request.url).pathname.replace(/\.[0-9a-f]{12}(?=\.\w+$)/, "");
  }

  async function page(event, request, kind) {
    const member = await Pages.member();
    const whose = await Pages.whose(kind);
    const kept = kind && whose ? await Pages.find(whose, request.url) : null;
    const coming = fetch(request);
    // what comes too late for now is there the next time
    const later = coming.then((response) => Pages.remember(request.url, kind, response.clone()));
    event.waitUntil(later.catch(() => {}));
    try {
      return await within(coming, kept ? SLOW_MS : PATIENCE_MS);
    } catch (failed) {
      if (kept) {
        return Pages.told(kept);
      }
      if (request.mode !== "navigate") {
        throw failed;
      }
      return shell(member, new URL(request.url).pathname === "/waiting" ? "/waiting" : "/offline");
    }
  }

  async function shell(member, path) {
    const own = member && (await Pages.find(member, path));
    const kept = own || (await (await caches.open(ASSETS)).match(path, { ignoreVary: true }));
    return kept ? Pages.told(kept) : Response.error();
  }

  function answerPost(event, request, url) {
    if (url.pathname === "/sign-out") {
      event.respondWith(signOut(request));
    } else if (POSTS.test(url.pathname)) {
      event.respondWith(posted(event, request, url.pathname));
    }
  }

  // Whoever takes the phone next finds nothing, with a connection or without.
  async function signOut(request) {
    const member = await Pages.member();
    let response;
    try {
      response = await within(fetch(request), ANSWER_MS);
    } catch {
      response = Response.redirect("/offline?signed-out", 303);
    }
    await Pages.learn("-");
    if (member) {
      await Kept.forget(member);
    }
    return response;
  }

  async function posted(event, request, path) {
    const type = request.headers.get("Content-Type") || "";
    const fields = Outbox.fields(await request.clone().formData());
    const id = Outbox.value(fields, "id");
    if (!id) {
      return fetch(request);
    }
    const form = {
      id: id,
      member: await Pages.member(),
      page: path,
      action: path,
      title: path,
      at: Date.now(),
      fields: fields,
      multipart: type.startsWith("multipart/"),
    };
    const answer = await Outbox.alone(id, () => once(event, request, form));
    return answer || Response.redirect("/waiting", 303);
  }

  async function once(event, request, sent) {
    const asksOnly = Outbox.asksOnly(sent.fields);
    const state = asksOnly ? "draft" : "sending";
    const form = await Kept.change(sent.id, (now) => ({
      ...sent,
      ...now,
      at: sent.at,
      fields: sent.fields,
      multipart: sent.multipart,
      action: sent.action,
      state: state,
    }));
    let came;
    let response = null;
    try {
      const patience = sent.multipart ? ANSWER_FILES_MS : ANSWER_MS;
      response = await within(fetch(request), patience);
      came = await judged(response, form);
    } catch {
      came = { state: "waits", status: 0 };
    }
    const shown = came.state === "sent" || came.state === "draft" || came.state === "refused";
    const next = asksOnly && !shown ? "draft" : came.state;
    await Kept.change(sent.id, (now) =>
      Outbox.settled(now || form, { ...came, state: next, quiet: next === "sent" }),
    );
    if (shown && response) {
      return came.link ? Response.redirect(came.link, 303) : response;
    }
    if (next === "waits" && self.registration.sync) {
      event.waitUntil(self.registration.sync.register("outbox").catch(() => {}));
    }
    return Response.redirect("/waiting", 303);
  }

  // The person looks at the answer: what they can correct there is a draft again.
  async function judged(response, form) {
    const state = Outbox.verdict(response);
    if (response.status === 403) {
      // the form is older than the browser's cookie: once more with a token of now
      const who = await Outbox.sender();
      if (who && who.member && who.member === form.member) {
        return Outbox.send(form, who.token);
      }
    }
    const corrected = response.status === 422 || response.status === 412;
    const mine = state === "asked" || corrected;
    const answer = state === "refused" ? await response.clone().text() : null;
    return { state: mine ? "draft" : state, status: response.status, link: null, answer: answer };
  }

  self.addEventListener("sync", function (event) {
    event.waitUntil(
      Outbox.drain().then(async function () {
        const left = await Outbox.pending();
        if (left.some((form) => form.state === "waits")) {
          // the browser tries again later
          throw new Error("something still waits");
        }
      }),
    );
  });

  self.addEventListener("message", function (event) {
    const said = event.data || {};
    if (said.member) {
      // a page that was loading while this began is not ours yet
      event.waitUntil(self.clients.claim().then(() => Pages.learn(said.member)));
    }
    if (said.opened && said.opened.startsWith(self.location.origin + "/")) {
      event.waitUntil(Pages.opened(said.opened).catch(() => {}));
    }
    if (said.draft) {
      event.waitUntil(Kept.draft(said.draft));
    }
  });
})();
