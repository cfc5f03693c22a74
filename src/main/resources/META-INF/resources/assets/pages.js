// Which pages stay on this phone, for whom and how long. Part of the service worker.
/* global BUILD, Kept */
// eslint-disable-next-line no-unused-vars
const Pages = (function () {
  "use strict";

  const WHOSE = "Emberwell-Member";
  const NOBODY = "-";
  const OF = "pages-";
  const BY_LINK = "by-link";
  const OLDEST_MS = 30 * 24 * 3600 * 1000;
  const FRESH_MS = 10 * 60 * 1000;
  const NEWEST_GRIDS = 3;
  const SHELLS = ["/offline", "/waiting"];
  const AHEAD = [...SHELLS, "/post", "/bench", "/grids"];
  const GONE = [403, 404, 410];
  const NOT_KEPT = ["content-encoding", "content-length", "transfer-encoding"];

  const ID = "[0-9a-f-]{36}";
  const IN_JAR = /^\/(assets|webjars)\//;
  const KINDS = [
    { path: /^\/cards\/[\w-]+$/, most: 20, byLink: true },
    { path: /^\/cards\/[\w-]+\/photo\.jpg$/, most: 20, byLink: true, files: true },
    { path: new RegExp(`^/fixtures/${ID}/photo\\.jpg$`), most: 20, files: true },
    { path: new RegExp(`^/grids(/plan|/${ID}(/(sheet|results|photo|edit))?)?$`), most: 60 },
    { path: new RegExp(`^/grids/${ID}/.+\\.(svg|jpg|png)$`), most: 40, files: true },
    { path: /^\/(bench|samples|lots|recipes|eyewear|rooms|fixtures)(\/.*)?$/, most: 40 },
    { path: new RegExp(`^/(post|ask/new|reports/${ID}/repeat)$`), most: 20 },
    { path: /^\/$/, most: 20, searches: true },
    { path: /^\/(offline|waiting)$/, most: 2 },
  ];

  function kindOf(url) {
    return KINDS.find((kind) => kind.path.test(url.pathname)) || null;
  }

  async function member() {
    return (await Kept.fact("member")) || null;
  }

  // Pages say whose they are. Those of anybody else are dropped; their drafts are not.
  async function learn(told) {
    const now = told === NOBODY ? null : told;
    const before = await member();
    if (now === before) {
      return;
    }
    await Kept.note("member", now);
    for (const name of await caches.keys()) {
      if (name.startsWith(OF) && name !== OF + now) {
        await caches.delete(name);
      }
    }
    for (const path of now ? AHEAD : []) {
      await ahead(now, new URL(path, self.location.origin).href);
    }
  }

  // For whom a page is kept. What a link opens is kept for whoever has this phone, be it nobody we
  // know; it goes when somebody signs in or out, like all that is another's.
  async function whose(kind) {
    return kind && kind.byLink ? BY_LINK : member();
  }

  function keptAt(response) {
    return Number(response.headers.get("Kept-At"));
  }

  async function find(whose, url) {
    const kept = await (await caches.open(OF + whose)).match(url, { ignoreVary: true });
    return kept && Date.now() - keptAt(kept) < OLDEST_MS ? kept : null;
  }

  // Withdrawn, held or somebody else's by now: not on this phone either.
  async function forget(url, byLink) {
    for (const name of await caches.keys()) {
      if (name.startsWith(OF)) {
        await (await caches.open(name)).delete(url, { ignoreVary: true, ignoreSearch: byLink });
      }
    }
  }

  async function remember(url, kind, response) {
    if (GONE.includes(response.status)) {
      await forget(url, Boolean(kind && kind.byLink));
    }
    const told = response.headers.get(WHOSE);
    if (!told || response.status >= 500) {
      if (kind && kind.files && response.ok) {
        await keep(await whose(kind), url, kind, response);
      }
      return;
    }
    await learn(told);
    if (kind && kind.byLink && response.ok) {
      await keep(BY_LINK, url, kind, response);
    } else if (kind && told !== NOBODY && response.ok) {
      const text = await keep(told, url, kind, response);
      if (new URL(url).pathname === "/grids") {
        await newestGrids(told, text);
      }
    }
  }

  async function keep(whose, url, kind, response) {
    const noted = response.headers.get("Cache-Control") || "";
    if (!whose || noted.includes("no-store")) {
      return "";
    }
    const headers = new Headers(response.headers);
    NOT_KEPT.forEach((name) => headers.delete(name));
    headers.set("Kept-At", String(Date.now()));
    const cache = await caches.open(OF + whose);
    if (kind.files) {
      await cache.put(url, new Response(await response.blob(), { headers: headers }));
      await trim(cache, kind);
      return "";
    }
    const text = await response.text();
    const title = /<title>([^<]*?)( · [^<]*)?<\/title>/.exec(text);
    headers.set("Kept-Title", encodeURIComponent(title ? title[1] : ""));
    await cache.put(url, new Response(text, { headers: headers }));
    await trim(cache, kind);
    await parts(whose, text);
    return text;
  }

  // What a kept page needs: its scripts, and what it shows of its own.
  async function parts(whose, text) {
    const assets = await caches.open("assets-" + BUILD.stamp);
    for (const found of text.matchAll(/ (?:src|href)="(\/(?:assets|grids|fixtures|cards)\/[^"]+)"/g)) {
      const url = new URL(found[1].replaceAll("&amp;", "&"), self.location.origin);
      const kind = kindOf(url);
      if (kind && kind.files) {
        await ahead(whose, url.href);
      } else if (IN_JAR.test(url.pathname) && !(await assets.match(url.href, { ignoreVary: true }))) {
        await assets.add(url.href).catch(() => {});
      }
    }
  }

  // The latest come last.
  async function trim(cache, kind) {
    const all = await cache.keys();
    const same = all.filter((request) => kindOf(new URL(request.url)) === kind);
    for (const request of same.slice(0, Math.max(0, same.length - kind.most))) {
      await cache.delete(request);
    }
  }

  async function ahead(whose, url) {
    const kept = await find(whose, url);
    if (kept && Date.now() - keptAt(kept) < FRESH_MS) {
      return;
    }
    try {
      const response = await fetch(url, { headers: { Purpose: "prefetch" }, redirect: "manual" });
      if (response.ok && (response.headers.get(WHOSE) || whose) === whose) {
        await keep(whose, url, kindOf(new URL(url)), response);
      }
    } catch {
      // there is another time
    }
  }

  // A card that was opened before this worker was there: there may be no second time.
  async function opened(url) {
    const kind = kindOf(new URL(url));
    if (kind && kind.byLink) {
      const response = await fetch(url, { headers: { Purpose: "prefetch" } });
      await remember(url, kind, response);
    }
  }

  // So that the plan opens in the workshop although only the list was looked at.
  async function newestGrids(whose, text) {
    const found = [...text.matchAll(new RegExp(`href="(/grids/${ID})"`, "g"))].map((each) => each[1]);
    for (const path of [...new Set(found)].slice(0, NEWEST_GRIDS)) {
      for (const part of ["", "/sheet", "/results", "/photo"]) {
        await ahead(whose, self.location.origin + path + part);
      }
    }
  }

  async function sweep() {
    for (const name of await caches.keys()) {
      if (name.startsWith(OF)) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) {
          const kept = await cache.match(request, { ignoreVary: true });
          if (!kept || Date.now() - keptAt(kept) > OLDEST_MS) {
            await cache.delete(request);
          }
        }
      }
    }
  }

  function asOf(at) {
    const then = new Date(at);
    const time = then.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
    const today = then.toDateString() === new Date().toDateString();
    const day = then.toLocaleDateString("en-GB", { day: "numeric", month: "short" });
    return today ? time : day + ", " + time;
  }

  // A kept page with the time it was kept at its top.
  async function told(kept) {
    const type = kept.headers.get("Content-Type") || "";
    if (!type.startsWith("text/html")) {
      return kept;
    }
    const at = keptAt(kept);
    const said = "No connection." + (at ? " As of " + asOf(at) + "." : "");
    const text = (await kept.text()).replace(
      /(<p class="offline-strip"[^>]*?) hidden>/,
      (_, start) => `${start} data-kept>${said}`,
    );
    return new Response(text, { headers: kept.headers });
  }

  return {
    SHELLS: SHELLS,
    kindOf: kindOf,
    member: member,
    whose: whose,
    learn: learn,
    find: find,
    remember: remember,
    opened: opened,
    sweep: sweep,
    told: told,
  };
})();
