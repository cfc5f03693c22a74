// What this phone keeps of forms: one store, read and written by pages and by the service worker.
// eslint-disable-next-line no-unused-vars
const Kept = (function () {
  "use strict";

  const FORMS = "forms";
  const FACTS = "facts";
  const EDITED = ["draft", "refused"];
  let opening = null;

  function opened() {
    opening =
      opening ||
      new Promise(function (resolve, reject) {
        const request = indexedDB.open("emberwell", 1);
        request.onupgradeneeded = function () {
          request.result.createObjectStore(FORMS, { keyPath: "id" });
          request.result.createObjectStore(FACTS);
        };
        request.onsuccess = function () {
          // a later version of the program in another tab may change the shape
          request.result.onversionchange = function () {
            request.result.close();
            opening = null;
          };
          resolve(request.result);
        };
        request.onerror = function () {
          opening = null;
          reject(request.error);
        };
      });
    return opening;
  }

  // One transaction, on the disk when it is done: the browser may be gone a moment later. The work asks the store and says what comes of it by its last request.
  async function within(store, mode, work) {
    const base = await opened();
    return new Promise(function (resolve, reject) {
      const transaction = base.transaction(store, mode, { durability: "strict" });
      let result;
      work(transaction.objectStore(store), function (value) {
        result = value;
      });
      transaction.oncomplete = function () {
        resolve(result);
      };
      transaction.onabort = transaction.onerror = function () {
        reject(transaction.error);
      };
    });
  }

  function get(store, key) {
    return within(store, "readonly", function (from, done) {
      from.get(key).onsuccess = function (event) {
        done(event.target.result);
      };
    });
  }

  function all() {
    return within(FORMS, "readonly", function (from, done) {
      from.getAll().onsuccess = function (event) {
        done(event.target.result.sort((one, other) => one.at - other.at));
      };
    });
  }

  // Changes one form as a whole, so that two tabs never mix theirs: what the change returns is kept,
  // null forgets it, undefined leaves it as it is.
  async function change(id, how) {
    const now = await within(FORMS, "readwrite", function (from, done) {
      from.get(id).onsuccess = function (event) {
        const before = event.target.result;
        const after = how(before);
        if (after === null) {
          from.delete(id);
        } else if (after !== undefined) {
          from.put(after);
        }
        done(after === undefined ? before : after);
      };
    });
    told.postMessage("changed");
    return now;
  }

  // What is being typed; what was handed in belongs to the outbox and only gets its name.
  function draft(now) {
    return change(now.id, function (before) {
      if (before && !EDITED.includes(before.state)) {
        return { ...before, title: now.title, about: now.about, page: now.page };
      }
      return { ...before, ...now, state: "draft" };
    });
  }

  async function forget(member) {
    await within(FORMS, "readwrite", function (from) {
      from.getAll().onsuccess = function (event) {
        event.target.result
          .filter((form) => form.member === member)
          .forEach((form) => from.delete(form.id));
      };
    });
    told.postMessage("changed");
  }

  function note(name, value) {
    return within(FACTS, "readwrite", function (into) {
      into.put(value, name);
    });
  }

  const told = new BroadcastChannel("emberwell-kept");

  return {
    form: (id) => get(FORMS, id),
    fact: (name) => get(FACTS, name),
    all: all,
    EDITED: EDITED,
    change: change,
    draft: draft,
    forget: forget,
    note: note,
    onChange: function (heard) {
      new BroadcastChannel("emberwell-kept").onmessage = heard;
    },
  };
})();
