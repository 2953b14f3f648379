// The few things that only the browser can do; everything else is C#.

// Enter in a field with a list takes from the list; it must not send off the form round it half filled. Said here, before the app hears of
// the key: by the time it has answered, the browser may have sent the form already.
window.addEventListener("keydown", e => {
  if (e.key === "Enter" && e.target instanceof HTMLInputElement && e.target.role === "combobox") e.preventDefault();
}, true);

// Client px -> the drawing's own units, through whatever scaling the page gave it.
export function toDrawing(svg, x, y) {
  const p = new DOMPoint(x, y).matrixTransform(svg.getScreenCTM().inverse());
  return [p.x, p.y];
}

export function capture(svg, pointer) {
  try { svg.setPointerCapture(pointer); } catch { /* the pointer has gone: nothing to hold */ }
}

// Tells the component the drawing's size in px, now and on every change.
export function watchSize(svg, component) {
  const watcher = new ResizeObserver(() => component.invokeMethodAsync("Sized", svg.clientWidth, svg.clientHeight));
  watcher.observe(svg);
  return { stop: () => watcher.disconnect() };
}

// A wheel or an arrow key over the drawing works the drawing and must not scroll the page.
export function holdKeys(svg) {
  svg.addEventListener("wheel", e => e.preventDefault(), { passive: false });
  svg.addEventListener("keydown", e => { if (e.key.startsWith("Arrow")) e.preventDefault(); });
}

export function stillness() {
  return document.documentElement.dataset.motion === "still" || matchMedia("(prefers-reduced-motion: reduce)").matches;
}

export function kindOfDevice() {
  return matchMedia("(pointer: coarse)").matches ? "phone" : "desk";
}

export function focus(id) {
  const e = document.getElementById(id);
  if (e) { e.focus(); e.select?.(); }
}

export async function download(name, type, stream) {
  const blob = new Blob([await stream.arrayBuffer()], { type });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

export function keys(prefix) {
  return Object.keys(localStorage).filter(k => k.startsWith(prefix)).sort();
}

export function keepDraft(form, text) {
  try {
    if (text === null) sessionStorage.removeItem(`wm.draft.${form}`);
    else sessionStorage.setItem(`wm.draft.${form}`, text);
  } catch { /* Full: the form itself still stands. */ }
}

export function draft(form) {
  return sessionStorage.getItem(`wm.draft.${form}`);
}

// Back rooms by name: stopping what one does ends that room and no other.
const rooms = new Map();
let asked = 0;

function open(name) {
  const room = { worker: new Worker(new URL("./back-room.js", import.meta.url), { type: "module" }), waiting: new Map() };
  room.worker.onmessage = ({ data: { id, answer, fault, share } }) => {
    // What was stopped may still have a word on its way.
    if (!room.waiting.has(id)) return;
    const { done, fail, listener } = room.waiting.get(id);
    if (share !== undefined) return listener?.invokeMethodAsync("Told", share);
    room.waiting.delete(id);
    if (fault) fail(new Error(fault));
    else done(answer);
  };
  room.worker.onerror = e => closeBackRoom(name, e.message || "the back room could not be opened");
  rooms.set(name, room);
  return room;
}

// Bytes are copied to the back room; they stay here too, for a back room that was closed.
export function askBackRoom(name, task, text, listener, bytes) {
  const room = rooms.get(name) ?? open(name);
  const id = ++asked;
  return new Promise((done, fail) => {
    room.waiting.set(id, { done, fail, listener });
    room.worker.postMessage({ id, task, text, bytes });
  });
}

export function closeBackRoom(name, why = "stopped") {
  const room = rooms.get(name);
  if (!room) return;
  rooms.delete(name);
  room.worker.terminate();
  for (const { fail } of room.waiting.values()) fail(new Error(why));
}
