// Files chosen, dropped or pasted: they stay here while they are sent, whichever page is open meanwhile.
const files = new Map();
const sending = new Map();
let last = 0;

window.addEventListener("beforeunload", e => { if (files.size) e.preventDefault(); });

function take(list, listener) {
  const chosen = [...list].filter(f => f instanceof File);
  if (!chosen.length) return;
  const ids = chosen.map(f => { files.set(++last, f); return last; });
  listener.invokeMethodAsync("Chosen", ids, chosen.map(f => f.name), chosen.map(f => f.size), chosen.map(f => f.lastModified));
}

// Watches a field and the area round it; what is pasted anywhere on the page counts while it is watched.
export function watch(area, listener) {
  const over = e => { e.preventDefault(); area.classList.add("over"); };
  const out = () => area.classList.remove("over");
  const drop = e => { e.preventDefault(); out(); take(e.dataTransfer.files, listener); };
  const change = e => { if (e.target.type === "file") { take(e.target.files, listener); e.target.value = ""; } };
  const paste = e => { if (e.clipboardData?.files.length) { e.preventDefault(); take(e.clipboardData.files, listener); } };
  area.addEventListener("dragover", over);
  area.addEventListener("dragleave", out);
  area.addEventListener("drop", drop);
  area.addEventListener("change", change);
  document.addEventListener("paste", paste);
  return { stop: () => document.removeEventListener("paste", paste) };
}

// Its first bytes: kind and camera's notes stand there.
export async function head(id, most) {
  return new Uint8Array(await files.get(id).slice(0, most).arrayBuffer());
}

// The status and what was answered; 0 when nobody answered, -1 when it was stopped.
export function send(id, address, listener) {
  return new Promise(done => {
    const ask = new XMLHttpRequest();
    sending.set(id, ask);
    const end = (status, text) => { sending.delete(id); done([String(status), text]); };
    ask.upload.onprogress = e => { if (e.lengthComputable) listener.invokeMethodAsync("Told", id, e.loaded / e.total); };
    ask.onload = () => end(ask.status, ask.responseText);
    ask.onerror = () => end(0, "");
    ask.onabort = () => end(-1, "");
    ask.open("POST", address);
    ask.setRequestHeader("Content-Type", "application/octet-stream");
    ask.send(files.get(id));
  });
}

export function stop(id) { sending.get(id)?.abort(); }

export function bytes(id) { return files.get(id); }

export function drop(id) { files.delete(id); }

// Tells when the end of a list comes near the window.
export function watchEnd(mark, listener) {
  const watcher = new IntersectionObserver(seen => { if (seen.some(s => s.isIntersecting)) listener.invokeMethodAsync("End"); }, { rootMargin: "600px" });
  watcher.observe(mark);
  return { stop: () => watcher.disconnect() };
}

// Left and right turn over to the neighbours, unless what has the focus has a use of its own for them.
const ownArrows = "input, textarea, select, [role=combobox], [role=listbox], svg, dialog";

export function turning(listener) {
  const heard = e => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[e.key];
    if (!by || e.defaultPrevented || e.ctrlKey || e.metaKey || e.altKey || e.shiftKey || e.target.closest?.(ownArrows) || document.querySelector("dialog[open]")) return;
    e.preventDefault();
    listener.invokeMethodAsync("Turn", by);
  };
  document.addEventListener("keydown", heard);
  return { stop: () => document.removeEventListener("keydown", heard) };
}

// Width and height in px; zeros when it cannot be shown.
export async function sizeOf(address) {
  const picture = new Image();
  picture.src = address;
  try {
    await picture.decode();
    return [picture.naturalWidth, picture.naturalHeight];
  } catch {
    return [0, 0];
  }
}

// The browser itself fetches and saves it.
export function save(address) {
  const link = document.createElement("a");
  link.href = address;
  link.download = "";
  link.click();
}
