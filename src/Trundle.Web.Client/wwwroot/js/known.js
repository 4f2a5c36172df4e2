// What the workshop's computer told this device of its visits, so that a page that is opened with no network shows them; and the program itself for the
// same purpose, where the address is secure. A list of its own: what waits to be sent lies elsewhere and is never touched here.

import { done } from "/js/bay.js";

const mostVisits = 20;
let opening;

function database() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("trundle-known", 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("entries", { keyPath: "id" }).createIndex("visit", "visit");
      request.result.createObjectStore("visits", { keyPath: "visit" });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opening;
}

function answered(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

// Keeps entries of a visit as the host told them. What cannot be kept is asked for again.
export async function know(visit, json) {
  try {
    const transaction = (await database()).transaction(["entries", "visits"], "readwrite");
    for (const entry of JSON.parse(json)) {
      transaction.objectStore("entries").put({ ...entry, visit });
    }

    transaction.objectStore("visits").put({ visit, at: Date.now() });
    await done(transaction);
    await forgetOldest();
  } catch {
    // A browser that keeps nothing still has the page that is open.
  }
}

// The entries of a visit that this device was told, as JSON.
export async function known(visit) {
  try {
    const entries = (await database()).transaction("entries").objectStore("entries");
    return JSON.stringify(await answered(entries.index("visit").getAll(visit)));
  } catch {
    return "[]";
  }
}

// What people entered in a kind of field on every visit that this device knows, the most usual first, as JSON.
export async function usual(ending) {
  try {
    const entries = await answered((await database()).transaction("entries").objectStore("entries").getAll());
    const count = new Map();
    for (const { field, typed } of entries) {
      if (field.endsWith(ending) && typed) {
        count.set(typed, (count.get(typed) ?? 0) + 1);
      }
    }

    return JSON.stringify([...count].sort((a, b) => b[1] - a[1]).slice(0, 60).map(([typed]) => typed));
  } catch {
    return "[]";
  }
}

// Everything that this device was told leaves it: nobody is signed in here any more.
export async function forgetAll() {
  try {
    const transaction = (await database()).transaction(["entries", "visits"], "readwrite");
    transaction.objectStore("entries").clear();
    transaction.objectStore("visits").clear();
    await done(transaction);
  } catch {
    // Nothing was kept.
  }
}

async function forgetOldest() {
  const transaction = (await database()).transaction(["entries", "visits"], "readwrite");
  const visits = await answered(transaction.objectStore("visits").getAll());
  for (const { visit } of visits.sort((a, b) => b.at - a.at).slice(mostVisits)) {
    transaction.objectStore("visits").delete(visit);
    const keys = await answered(transaction.objectStore("entries").index("visit").getAllKeys(visit));
    keys.forEach(key => transaction.objectStore("entries").delete(key));
  }

  await done(transaction);
}

// On a secure address the program's own files are kept too, and a page of the bay opens with no network.
export async function keepProgram() {
  if (!("serviceWorker" in navigator) || !isSecureContext) {
    return;
  }

  try {
    await navigator.serviceWorker.register("/service-worker.js");
    const kept = await caches.open("trundle");
    const files = new Set(["/js/photos.js", "/css/tools.css", ...performance.getEntriesByType("resource").map(r => new URL(r.name)).filter(u => u.origin === location.origin && !u.pathname.startsWith("/api/")).map(u => u.pathname + u.search)]);
    for (const file of files) {
      if (!await kept.match(file)) {
        await kept.add(file);
      }
    }

    // The page itself comes last: where it is kept, all that it needs is.
    await kept.add("/bay/");

    // Files of an older edition of the program are not needed any more.
    for (const request of await kept.keys()) {
      const address = new URL(request.url);
      if (address.pathname.startsWith("/_framework/") && !files.has(address.pathname + address.search)) {
        await kept.delete(request);
      }
    }
  } catch {
    // It is tried again when a page is opened next.
  }
}
