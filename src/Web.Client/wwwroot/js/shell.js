// What the frame round every page needs of the browser: dialogs, single keys, wishes, live pictures.

// ---- Dialogs: the browser's own, which hold the focus, close on Esc and give the focus back.
export function show(dialog) {
  if (dialog.open) return;
  dialog.showModal();
  dialog.addEventListener("click", e => { if (e.target === dialog) dialog.close(); });
}

export function shut(dialog) {
  if (dialog?.open) dialog.close();
}

// A page shows a heading while it fetches and another when it has fetched: the focus goes from the one to the other, not back to
// the beginning of the page. Whatever the person does ends it.
const followTime = 15000; // ms

export function followHead() {
  const main = document.getElementById("content");
  const watcher = new MutationObserver(() => {
    const head = main.querySelector("h1");
    if (!head || document.activeElement !== document.body) return;
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
  });
  const end = () => {
    watcher.disconnect();
    for (const name of ["pointerdown", "keydown"]) window.removeEventListener(name, end, true);
  };
  watcher.observe(main, { childList: true, subtree: true });
  for (const name of ["pointerdown", "keydown"]) window.addEventListener(name, end, true);
  setTimeout(end, followTime);
}

export function inSight(id) { document.getElementById(id)?.scrollIntoView({ block: "nearest" }); }

// Up and down choose from the list below a field; they must not move the caret in it as well.
window.addEventListener("keydown", e => {
  if ((e.key === "ArrowDown" || e.key === "ArrowUp") && e.target.role === "combobox") e.preventDefault();
}, true);

// ---- Single keys (WCAG 2.1.4): only when no field has the focus, never with a control key, and they can be switched off.
const ownKeys = "input, textarea, select, [contenteditable], dialog, [role=listbox], svg, .solid-view, summary:focus-visible";
const leadTime = 2500; // ms that a g waits for its letter

export function hearKeys(component) {
  let timer = 0;
  const drop = () => { clearTimeout(timer); timer = 0; delete document.documentElement.dataset.lead; };
  const heard = e => {
    // A field undoes its own typing, and what is drawn its own strokes.
    if ((e.ctrlKey || e.metaKey) && !e.altKey && !e.shiftKey && e.key.toLowerCase() === "z" && !e.defaultPrevented && !e.target.closest?.(ownKeys) && !document.querySelector("dialog[open]")) {
      component.invokeMethodAsync("Pressed", "undo");
      return;
    }
    if (localStorage.getItem("wm.keys") === "off" || e.defaultPrevented || e.ctrlKey || e.metaKey || e.altKey || e.isComposing) return;
    if (e.target.closest?.(ownKeys) || document.querySelector("dialog[open]") || e.key.length !== 1) return;
    if (timer) {
      drop();
      e.preventDefault();
      component.invokeMethodAsync("Pressed", "g " + e.key.toLowerCase());
    } else if (e.key === "g") {
      document.documentElement.dataset.lead = "";
      timer = setTimeout(drop, leadTime);
    } else if ("/?an".includes(e.key)) {
      e.preventDefault();
      component.invokeMethodAsync("Pressed", e.key);
    }
  };
  document.addEventListener("keydown", heard);
  return { stop: () => { drop(); document.removeEventListener("keydown", heard); } };
}

// ---- Wishes that shape the page; js/theme.js sets them before the first paint.
export function wish(name, value) {
  if (value) {
    document.documentElement.dataset[name] = value;
    localStorage.setItem("wm." + name, value);
  } else {
    delete document.documentElement.dataset[name];
    localStorage.removeItem("wm." + name);
  }
}

export function print() { window.print(); }

// ---- A live picture: pinch, Ctrl and wheel, + and - come nearer; a drag, a touch or the arrows move it; 0 fits it in again.
// Only its viewBox is changed, so it stays sharp, and a picture drawn anew is taken up where it stands.
const nearest = 16;
const stroke = 6; // px: less is a touch

export function livePicture(place) {
  const held = new Map();
  let tapped = null; // where a lone finger came down
  let view = null; // what is seen, as shares of the whole: x, y, size

  const svg = () => place.querySelector("svg");
  const whole = s => s.wholeBox ??= (s.getAttribute("viewBox") ?? `0 0 ${s.clientWidth} ${s.clientHeight}`).split(/[ ,]+/).map(Number);

  function draw() {
    const s = svg();
    if (!s) return;
    const [x, y, w, h] = whole(s);
    const near = view && view.size < 1;
    if (near) s.setAttribute("viewBox", `${x + view.x * w} ${y + view.y * h} ${w * view.size} ${h * view.size}`);
    else { view = null; s.setAttribute("viewBox", `${x} ${y} ${w} ${h}`); }
    place.classList.toggle("near", !!near);
  }

  // The point at these shares of what is seen keeps its place.
  function zoom(factor, at = [0.5, 0.5]) {
    const now = view ?? { x: 0, y: 0, size: 1 };
    const size = Math.min(1, Math.max(1 / nearest, now.size * factor));
    view = { x: now.x + at[0] * (now.size - size), y: now.y + at[1] * (now.size - size), size };
    keepWithin();
    draw();
  }

  function move(dx, dy) {
    if (!view) return;
    view.x += dx * view.size;
    view.y += dy * view.size;
    keepWithin();
    draw();
  }

  function keepWithin() {
    view.x = Math.min(1 - view.size, Math.max(0, view.x));
    view.y = Math.min(1 - view.size, Math.max(0, view.y));
  }

  const share = e => {
    const box = svg().getBoundingClientRect();
    return [(e.clientX - box.left) / box.width, (e.clientY - box.top) / box.height];
  };

  const heard = {
    wheel(e) {
      if (!e.ctrlKey || !svg()) return;
      e.preventDefault();
      zoom(Math.exp(Math.max(-200, Math.min(200, e.deltaY)) / 300), share(e));
    },
    pointerdown(e) {
      if (!svg()) return;
      held.set(e.pointerId, [e.clientX, e.clientY]);
      tapped = held.size === 1 ? [e.clientX, e.clientY] : null;
      if (view || held.size > 1) place.setPointerCapture(e.pointerId);
    },
    pointermove(e) {
      const before = held.get(e.pointerId);
      if (!before || !svg()) return;
      held.set(e.pointerId, [e.clientX, e.clientY]);
      const box = svg().getBoundingClientRect();
      if (held.size === 2) {
        const other = [...held].find(([id]) => id !== e.pointerId)[1];
        const apart = p => Math.hypot(p[0] - other[0], p[1] - other[1]);
        const now = apart([e.clientX, e.clientY]);
        if (now > 1) zoom(apart(before) / now, [((e.clientX + other[0]) / 2 - box.left) / box.width, ((e.clientY + other[1]) / 2 - box.top) / box.height]);
      } else if (view) move((before[0] - e.clientX) / box.width, (before[1] - e.clientY) / box.height);
    },
    pointerup(e) {
      held.delete(e.pointerId);
      // A touch without a stroke brings that place to the middle: nobody has to drag (WCAG 2.5.7).
      if (!view || !tapped || Math.hypot(e.clientX - tapped[0], e.clientY - tapped[1]) > stroke) return;
      const [x, y] = share(e);
      move(x - 0.5, y - 0.5);
    },
    pointercancel(e) { held.delete(e.pointerId); },
    keydown(e) {
      if (e.ctrlKey || e.metaKey || e.altKey) return;
      const by = 0.15, arrows = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, -by], ArrowDown: [0, by] };
      if (e.key === "+" || e.key === "=") zoom(0.7);
      else if (e.key === "-") zoom(1 / 0.7);
      else if (e.key === "0") { view = null; draw(); }
      else if (arrows[e.key] && view) move(...arrows[e.key]);
      else return;
      e.preventDefault();
    },
  };
  for (const [name, on] of Object.entries(heard)) place.addEventListener(name, on, { passive: false });
  // A picture drawn anew is seen as near as the one before it.
  const watcher = new MutationObserver(() => { if (view) draw(); });
  watcher.observe(place, { childList: true });

  return {
    nearer: () => zoom(0.7),
    farther: () => zoom(1 / 0.7),
    fit: () => { view = null; draw(); },
    stop: () => { watcher.disconnect(); for (const [name, on] of Object.entries(heard)) place.removeEventListener(name, on); },
  };
}
