// Runs before the first paint so that a chosen light or dark sheet does not flash.
const chosen = localStorage.getItem("wm.theme");
if (chosen) document.documentElement.dataset.theme = chosen;
