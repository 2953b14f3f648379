// Keeps the whole app and what was last read on this device, so that it opens with no network. Written for this app alone: the manifest of
// its files is made by the build, everything else is below.
self.importScripts("service-worker-assets.js");

const app = `wm-app-${self.assetsManifest.version}`;
const records = "wm-kept";
const pictures = "wm-pictures";

// How long a page waits for the host before it is shown what was kept, ms.
const patience = 4000;
const mostRecords = 3000;
const mostPictureBytes = 300e6;

// Read again and again by the pages; anything else under /api goes to the host alone (pairing, devices, long work).
const recordAddress = /^\/api\/(vehicles|samples|jobs|shop|instruments|calendar)(\/|$)/;
const passing = /\/exports(\/|$)/;
const pictureAddress = /^\/api\/pictures\/([0-9a-f]{64})(\/(small|view))?$/;

// Files under a name that changes with their content can also be asked for without that mark.
const marked = /\.[a-z0-9]{10}(\.[a-z]+)$/;
const left = /\.(pdb|map|gz|br)$|^service-worker/;
const files = new Map();
for (const { url, hash } of self.assetsManifest.assets) {
  if (left.test(url)) continue;
  const file = { url: new URL(url, self.registration.scope).href, hash, fixed: marked.test(url) };
  files.set(file.url, file);
  if (file.fixed && !files.has(file.url.replace(marked, "$1"))) files.set(file.url.replace(marked, "$1"), file);
}
const front = new URL("index.html", self.registration.scope).href;

self.addEventListener("install", event => event.waitUntil(install()));
self.addEventListener("activate", event => event.waitUntil(activate()));
self.addEventListener("message", event => { if (event.data === "take over") self.skipWaiting(); });

self.addEventListener("fetch", event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  const path = url.pathname;
  if (request.mode === "navigate") {
    if (!path.startsWith("/api/") && !/\.[a-z0-9]+$/i.test(path)) event.respondWith(file(front, request));
  } else if (pictureAddress.test(path)) event.respondWith(picture(event, request, path));
  else if (recordAddress.test(path) && !passing.test(path)) event.respondWith(record(event, request));
  else if (files.has(url.origin + path)) event.respondWith(file(url.origin + path, request));
});

// All of the new version or none: until every file has come and is what the build made, the version before goes on.
async function install() {
  const cache = await caches.open(app);
  const wanted = [...new Set(files.values())];
  const next = async () => {
    for (let f; (f = wanted.pop());) {
      if (await cache.match(f.url)) continue;
      const before = f.fixed ? await caches.match(f.url) : null;
      const reply = before ?? await fetch(new Request(f.url, { integrity: f.hash, cache: f.fixed ? "default" : "no-cache" }));
      if (!reply.ok) throw new Error(`${f.url}: ${reply.status}`);
      await cache.put(f.url, reply);
    }
  };
  await Promise.all([next(), next(), next(), next()]);
}

async function activate() {
  for (const name of await caches.keys()) if (name.startsWith("wm-app-") && name !== app) await caches.delete(name);
  await self.clients.claim();
}

async function file(address, request) {
  const cache = await caches.open(app);
  return await cache.match(files.get(address)?.url ?? address) ?? fetch(request);
}

// The host first; when it is away or slow, what it said last, marked with when.
async function record(event, request) {
  const answer = fetch(request);
  event.waitUntil(answer.then(reply => keep(request.url, reply.clone()), () => { }));
  const first = await Promise.race([answer.catch(() => null), new Promise(done => setTimeout(done, patience, null))]);
  if (first && first.status < 500) return first;
  const copy = await (await caches.open(records)).match(request.url);
  return copy ?? first ?? answer;
}

async function keep(address, reply) {
  if (reply.status !== 200 || /no-store/.test(reply.headers.get("cache-control") ?? "")) return;
  const headers = new Headers(reply.headers);
  headers.set("x-wm-kept-at", new Date().toISOString());
  headers.delete("content-encoding");
  const cache = await caches.open(records);
  try {
    await cache.put(address, new Response(await reply.blob(), { headers }));
  } catch {
    return; // The device is full: what was read is on the page, only not kept.
  }
  const all = await cache.keys();
  for (const old of all.slice(0, Math.max(0, all.length - mostRecords))) await cache.delete(old);
}

// What a picture's address names never changes: kept ones first, then those that wait to be sent, then the host.
async function picture(event, request, path) {
  const cache = await caches.open(pictures);
  const kept = await cache.match(request.url);
  if (kept) {
    event.waitUntil(used(request.url, 0));
    return kept;
  }
  const waiting = await waitingPicture(pictureAddress.exec(path)[1]);
  if (waiting) return new Response(waiting.blob, { headers: { "content-type": waiting.type } });
  const reply = await fetch(request);
  if (reply.status === 200 && !/no-store/.test(reply.headers.get("cache-control") ?? "")) event.waitUntil(keepPicture(cache, request.url, reply.clone()));
  return reply;
}

async function keepPicture(cache, address, reply) {
  try {
    const blob = await reply.blob();
    await cache.put(address, new Response(blob, { headers: reply.headers }));
    await used(address, blob.size);
  } catch { /* The device is full: it is shown, only not kept. */ }
}

let uses = null;

function base(name, make) {
  return new Promise((done, fail) => {
    const asked = indexedDB.open(name, 1);
    asked.onupgradeneeded = () => make ? make(asked.result) : asked.transaction.abort();
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });
}

function asked(request) {
  return new Promise((done, fail) => { request.onsuccess = () => done(request.result); request.onerror = () => fail(request.error); });
}

// Notes that a picture was looked at, and lets the longest unseen go when there are too many bytes.
async function used(url, size) {
  uses ??= base("wm-uses", db => db.createObjectStore("uses", { keyPath: "url" }));
  const store = (await uses).transaction("uses", "readwrite").objectStore("uses");
  const known = await asked(store.get(url));
  store.put({ url, size: size || known?.size || 0, at: Date.now() });
  if (!size) return;
  const all = await asked(store.getAll());
  let sum = all.reduce((s, u) => s + u.size, 0);
  if (sum <= mostPictureBytes) return;
  const cache = await caches.open(pictures);
  for (const old of all.sort((a, b) => a.at - b.at)) {
    if (sum <= mostPictureBytes * 0.9) break;
    sum -= old.size;
    await cache.delete(old.url);
    (await uses).transaction("uses", "readwrite").objectStore("uses").delete(old.url);
  }
}

async function waitingPicture(id) {
  try {
    const db = await base("wm", null);
    const found = await asked(db.transaction("pictures").objectStore("pictures").get(id));
    db.close();
    return found ?? null;
  } catch {
    return null; // Nothing was ever kept here.
  }
}
