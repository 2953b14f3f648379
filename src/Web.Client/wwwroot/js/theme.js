// Runs before the first paint so that what the person chose (light or dark, size of type, motion, side of the thumb) does not flash.
for (const name of ["theme", "type", "motion", "thumb"]) {
  const chosen = localStorage.getItem("wm." + name);
  if (chosen) document.documentElement.dataset[name] = chosen;
}
