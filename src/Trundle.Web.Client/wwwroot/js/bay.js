// What only the browser can do for the bay: keep entries until they are sent, ask the host, put the focus where the hand is.
// IndexedDB, fetch and localStorage all work on a plain http address in the workshop's own network.

const store = "outbox";
let opening;

function database() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open("trundle", 1);
    request.onupgradeneeded = () => {
      const entries = request.result.createObjectStore(store, { keyPath: "n", autoIncrement: true });
      entries.createIndex("id", "id", { unique: true });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  return opening;
}

// Settles once a transaction is on the disk of this device, or could not be.
export function done(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
  });
}

// True where the entries are on the disk of this device.
export async function keep(json) {
  try {
    const transaction = (await database()).transaction(store, "readwrite", { durability: "strict" });
    for (const entry of JSON.parse(json)) {
      transaction.objectStore(store).add(entry);
    }

    await done(transaction);
    return true;
  } catch {
    return false;
  }
}

// Every entry not yet sent, in the order in which they were made.
export async function waiting() {
  try {
    const transaction = (await database()).transaction(store, "readonly");
    const request = transaction.objectStore(store).getAll();
    await done(transaction);
    return JSON.stringify({ kept: true, entries: request.result });
  } catch {
    return JSON.stringify({ kept: false, entries: [] });
  }
}

// The host has these.
export async function forget(json) {
  await each(JSON.parse(json), (entries, key) => entries.delete(key));
}

// The host will not take these: they stay, with its reason, until they are entered anew.
export async function refuse(json) {
  const reasons = new Map(JSON.parse(json).map(r => [r.id, r.message]));
  await each([...reasons.keys()], (entries, key, entry) => entries.put({ ...entry, refused: reasons.get(entry.id) }));
}

async function each(ids, act) {
  try {
    const transaction = (await database()).transaction(store, "readwrite");
    const entries = transaction.objectStore(store);
    for (const id of ids) {
      const request = entries.index("id").get(id);
      request.onsuccess = () => { if (request.result) { act(entries, request.result.n, request.result); } };
    }

    await done(transaction);
  } catch {
    // What cannot be taken off the list is sent again, and the host takes it once.
  }
}

// Asks the host; status 0 where it was not reached.
export async function ask(method, address, body) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), 15000);
  try {
    const answer = await fetch(address, {
      method, body, cache: "no-store", credentials: "same-origin", signal: stop.signal,
      headers: body ? { "Content-Type": "application/json" } : {},
    });
    return JSON.stringify({ status: answer.status, text: await answer.text() });
  } catch {
    return JSON.stringify({ status: 0, text: "" });
  } finally {
    clearTimeout(timer);
  }
}

// A form kept on this device under a name; false where the browser keeps nothing, or not so much.
export function remember(name, text) {
  try {
    if (text === null) {
      localStorage.removeItem(name);
    } else {
      localStorage.setItem(name, text);
    }

    return true;
  } catch {
    return false;
  }
}

// What was kept under a name, or null.
export function recall(name) {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

// Puts the focus on the field that the address names, else on the heading, and the sheet to its top.
export function settle(field) {
  const target = field ? document.getElementById(field) : null;
  if (target) {
    for (let folded = target.closest("details"); folded; folded = folded.parentElement.closest("details")) {
      folded.open = true;
    }

    target.scrollIntoView({ block: "center" });
    const control = target.matches("input, select, textarea, button, a") ? target : target.querySelector("input, select, textarea, button, a");
    control?.focus({ preventScroll: true });
    return;
  }

  for (const moving of document.querySelectorAll(".sheet .page, .sheet .middle")) {
    moving.scrollTop = 0;
  }

  scrollTo(0, 0); // In a low window it is the whole sheet that moves.
  const heading = document.querySelector("h1");
  heading?.setAttribute("tabindex", "-1");
  heading?.focus({ preventScroll: true });
}

// A hand that types goes on by itself: after the digits that make a whole reading, and at Enter. Only a key that was pressed moves it, never a paste or
// a completion; a reading that could still grow waits for Enter. Behind the last one the next step is in reach.
let advancing = false;
function advance() {
  const onward = (from, fields) => {
    const all = [...document.querySelectorAll(fields)].filter(e => !e.disabled && e.offsetParent !== null);
    const next = all[all.indexOf(from) + 1];
    if (next) {
      next.focus();
      next.select();
    } else {
      const foot = document.querySelector(".next");
      foot?.setAttribute("tabindex", "-1");
      foot?.focus({ preventScroll: true });
    }
  };
  if (advancing) {
    return;
  }

  advancing = true;
  addEventListener("input", event => {
    const field = event.target;
    if (event.inputType === "insertText" && event.data?.length === 1 && field.dataset?.whole && new RegExp(`^(?:${field.dataset.whole})$`).test(field.value)) {
      onward(field, "[data-whole]");
    }
  });
  addEventListener("keydown", event => {
    if (event.key === "Enter" && !event.isComposing && event.target.matches?.(".middle input[type=text]") && !event.target.form) {
      event.preventDefault();
      onward(event.target, "whole" in event.target.dataset ? "[data-whole]" : ".middle input[type=text]:not([data-aside])");
    }
  });
}

// Tells the bay when the network is back, so that entries leave at once.
export function watch(bay) {
  advance();
  addEventListener("online", () => bay.invokeMethodAsync("NetworkIsBack"));
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden) {
      bay.invokeMethodAsync("NetworkIsBack");
    }
  });
}
