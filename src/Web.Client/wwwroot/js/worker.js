// Lets the browser keep the app. Apart from the app itself, so that a version that does not start can still be replaced.
if ("serviceWorker" in navigator) {
  const worker = navigator.serviceWorker;
  const fresh = !worker.controller;
  let reloading = false;

  worker.addEventListener("controllerchange", () => {
    if (fresh) {
      // What the first page read before there was anybody to keep it is read once more.
      for (const { name } of performance.getEntriesByType("resource"))
        if (new URL(name).pathname.startsWith("/api/")) fetch(name).catch(() => { });
    } else if (!reloading) {
      reloading = true;
      location.reload();
    }
  });

  // The first page is not held up by the keeping of all the others.
  const register = () => worker.register("service-worker.js", { updateViaCache: "none" }).catch(e => console.info(`The app is not kept on this device: ${e.message}`));
  addEventListener("load", () => setTimeout(register, fresh ? 2000 : 0));
}
