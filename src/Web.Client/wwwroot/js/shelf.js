// The browser's own database: what waits to be sent lies here. Every writing is answered only when it is on the disk.

const stores = ["entries", "decisions", "sent", "pictures"];
let base = null;
let lasting = null;

function open() {
  return base ??= new Promise((done, fail) => {
    if (!globalThis.indexedDB) return fail(new DOMException("no database", "NotSupportedError"));
    const asked = indexedDB.open("wm", 1);
    asked.onupgradeneeded = () => stores.forEach(s => asked.result.createObjectStore(s));
    asked.onblocked = () => fail(new DOMException("blocked", "InvalidStateError"));
    asked.onerror = () => fail(asked.error);
    asked.onsuccess = () => {
      asked.result.onversionchange = () => { asked.result.close(); base = null; };
      asked.result.onclose = () => { base = null; };
      done(asked.result);
    };
  }).catch(e => { base = null; throw e; });
}

function whole(transaction) {
  return new Promise((done, fail) => {
    transaction.oncomplete = () => done();
    transaction.onabort = () => fail(transaction.error ?? new DOMException("aborted", "AbortError"));
    transaction.onerror = () => { };
  });
}

function asked(request) {
  return new Promise((done, fail) => { request.onsuccess = () => done(request.result); request.onerror = () => fail(request.error); });
}

// The name of what went wrong, for C# to put into words; empty when nothing did.
async function named(work) {
  try {
    await work();
    return "";
  } catch (e) {
    return e?.name ?? "Error";
  }
}

// Everything that lies there, as one JSON text; an object with only "fault" when nothing can be kept.
export async function read(withSent) {
  try {
    const transaction = (await open()).transaction(stores);
    const all = s => asked(transaction.objectStore(s).getAll());
    const [entries, decisions, sent, pictures] = await Promise.all([all("entries"), all("decisions"), withSent ? all("sent") : [], asked(transaction.objectStore("pictures").getAllKeys())]);
    const about = await Promise.all(pictures.map(async id => (({ size, type, at, refusal }) => ({ id, size, type, at, refusal }))(await asked(transaction.objectStore("pictures").get(id)))));
    return JSON.stringify({ entries: entries.map(e => JSON.parse(e)), decisions: decisions.map(d => JSON.parse(d)), sent: sent.map(s => JSON.parse(s)), pictures: about });
  } catch (e) {
    return JSON.stringify({ fault: e?.name ?? "Error" });
  }
}

// One transaction: all of it is on the disk when this is answered, or none of it.
export function change(json) {
  const { puts, drops } = JSON.parse(json);
  return named(async () => {
    const transaction = (await open()).transaction(stores, "readwrite", { durability: "strict" });
    const done = whole(transaction);
    try {
      for (const { store, key, text } of puts) transaction.objectStore(store).put(text, key);
      for (const { store, key } of drops) transaction.objectStore(store).delete(key);
    } catch (e) {
      transaction.abort();
      await done.catch(() => { });
      throw e;
    }
    await done;
    // From the first thing that waits on: the browser is asked not to clear it away by itself.
    if (puts.length > 0 && !lasting) lasting = room(true).catch(() => []);
    channel?.postMessage("changed");
  });
}

export async function keepPicture(id, bytes, type) {
  return named(async () => {
    const transaction = (await open()).transaction(stores, "readwrite", { durability: "strict" });
    const done = whole(transaction);
    transaction.objectStore("pictures").put({ blob: new Blob([bytes], { type }), size: bytes.length, type, at: new Date().toISOString(), refusal: null }, id);
    await done;
    channel?.postMessage("changed");
  });
}

export async function picture(id) {
  const found = await asked((await open()).transaction("pictures").objectStore("pictures").get(id));
  return found ? new Uint8Array(await found.blob.arrayBuffer()) : new Uint8Array();
}

export async function refusePicture(id, refusal) {
  return named(async () => {
    const transaction = (await open()).transaction("pictures", "readwrite", { durability: "strict" });
    const done = whole(transaction);
    const store = transaction.objectStore("pictures");
    const found = await asked(store.get(id));
    if (found) store.put({ ...found, refusal }, id);
    await done;
    channel?.postMessage("changed");
  });
}

// Sent: it stays at hand among the kept pictures, so that it is seen when the host is away again.
export async function pictureSent(id) {
  try {
    const found = await asked((await open()).transaction("pictures").objectStore("pictures").get(id));
    if (found && globalThis.caches) await (await caches.open("wm-pictures")).put(`/api/pictures/${id}`, new Response(found.blob, { headers: { "content-type": found.type } }));
  } catch { /* The host has it: a copy here is only for comfort. */ }
  return change(JSON.stringify({ puts: [], drops: [{ store: "pictures", key: id }] }));
}

// SHA-256 as lower-case hexadecimal; empty where the browser gives none (it does on https and on this machine).
export async function fingerprint(bytes) {
  if (!globalThis.crypto?.subtle) return "";
  return [...new Uint8Array(await crypto.subtle.digest("SHA-256", bytes))].map(b => b.toString(16).padStart(2, "0")).join("");
}

// Only one page sends at a time; the others are told when something has changed.
let free = null;

export function turn() {
  if (!navigator.locks) return true;
  return new Promise(done => navigator.locks.request("wm.tray", { ifAvailable: true }, lock => {
    if (!lock) return done(false);
    return new Promise(end => { free = end; done(true); });
  }).catch(() => done(true)));
}

export function endTurn() {
  free?.();
  free = null;
}

let channel = null;

export function listen(tray) {
  if (globalThis.BroadcastChannel) {
    channel = new BroadcastChannel("wm.tray");
    channel.onmessage = () => tray.invokeMethodAsync("ChangedElsewhere");
  }
  const wake = () => tray.invokeMethodAsync("Woken");
  addEventListener("online", wake);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) wake(); });
}

// Asks the browser not to clear this away when the disk fills up. How much is taken and how much there is, bytes; -1 when it does not say.
export async function room(ask) {
  if (ask) await navigator.storage?.persist?.().catch(() => false);
  const { usage = -1, quota = -1 } = await navigator.storage?.estimate?.().catch(() => ({})) ?? {};
  return [usage, quota, await navigator.storage?.persisted?.().catch(() => false) ? 1 : 0];
}

// Everything that was only read from the host.
export async function forgetRead() {
  for (const name of ["wm-kept", "wm-pictures"]) await globalThis.caches?.delete(name);
  globalThis.indexedDB?.deleteDatabase("wm-uses");
  await change(JSON.stringify({ puts: [], drops: [] })).catch(() => "");
  const db = await open().catch(() => null);
  db?.transaction("sent", "readwrite").objectStore("sent").clear();
}

export function isKept() {
  return !!navigator.serviceWorker?.controller;
}

// Tells when a new version lies ready.
export async function watchVersion(line) {
  const worker = navigator.serviceWorker;
  if (!worker) return;
  const told = () => line.invokeMethodAsync("VersionReady");
  const place = await worker.getRegistration() ?? await worker.ready;
  if (place.waiting && worker.controller) told();
  place.addEventListener("updatefound", () => {
    const next = place.installing;
    next?.addEventListener("statechange", () => { if (next.state === "installed" && worker.controller) told(); });
  });
}

export async function takeVersion() {
  (await navigator.serviceWorker?.getRegistration())?.waiting?.postMessage("take over");
}
