// Has the page kept for use without a signal, and offers a newer build once it is here; nothing changes under the user's hands.

import { whole } from "./rooms.js";

const notice = document.getElementById("newer-build");
let agreed = false;

// What a browser needs to offer the page for a home screen: nobody who wants to note waits for it, nor for the icons that it names.
whole.then(() => document.head.append(Object.assign(document.createElement("link"), { rel: "manifest", href: "manifest.webmanifest" })));

if ("serviceWorker" in navigator) {
  // On the first visit every file is fetched once more to be kept: not before the page is whole, which would wait for them.
  if (navigator.serviceWorker.controller === null) {
    await whole;
  }
  const keeper = await navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" });
  offer(keeper);
  keeper.addEventListener("updatefound", () => keeper.installing?.addEventListener("statechange", () => offer(keeper)));
  navigator.serviceWorker.addEventListener("controllerchange", () => agreed && location.reload());
  notice.querySelector("button").addEventListener("click", () => {
    agreed = true;
    keeper.waiting?.postMessage("take over");
  });
}

function offer(keeper) {
  notice.hidden = keeper.waiting === null || navigator.serviceWorker.controller === null;
}
