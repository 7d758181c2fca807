// Starts the page. What the device and the server can bring without the runtime is begun at once. What the runtime starts without is
// fetched once its last byte is here: it takes nothing from that, and the network is idle while the processor starts it.

import { openAhead } from "./field-log.js";
import { pullAhead } from "./home-server.js";
import { fetchAhead, handOver } from "./rooms.js";

const last = "_framework/dotnet.native.wasm";
let [loaded, total] = [0, 1];
let arrived = false;
let begun = false;

function follow() {
  if (arrived && loaded >= total && !begun) {
    begun = true;
    fetchAhead();
  }
}

new PerformanceObserver((list, observer) => {
  if (list.getEntries().some(({ name }) => name.endsWith(last))) {
    arrived = true;
    observer.disconnect();
    follow();
  }
}).observe({ type: "resource", buffered: true });

openAhead();
pullAhead();
await Blazor.start({
  loadBootResource: (type, name) => handOver(name),
  configureRuntime: (runtime) =>
    runtime.withModuleConfig({
      onDownloadResourceProgress: (...now) => {
        [loaded, total] = now;
        follow();
      },
    }),
});
