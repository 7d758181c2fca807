// The worker's side: the page's own bundle once more, in a runtime that draws nothing.

import { dotnet } from "./_framework/dotnet.js";

const { setModuleImports, getAssemblyExports, getConfig, INTERNAL } = await dotnet.create();
setModuleImports("worker", { told: (share) => postMessage({ share }) });
const exported = await getAssemblyExports(getConfig().mainAssemblyName);
const thinker = exported.Underturf.FieldApp.Browser.Thinker;

/** What draws is left out of the page's start: it is fetched before the first task that draws. */
const drawing = new Set(["Papers", "Day", "Locate"]);
let fetching = null;
const fetched = () => (fetching ??= Promise.all((getConfig().resources.lazyAssembly ?? []).map(({ name }) => INTERNAL.loadLazyAssembly(name))));

addEventListener("message", async ({ data }) => {
  try {
    if (drawing.has(data.task)) {
      await fetched();
    }
    const answer = data.about ? thinker[data.task](data.log, data.about) : thinker[data.task](data.log);
    postMessage({ answer }, [answer.buffer]);
  } catch (error) {
    postMessage({ failed: String(error?.message ?? error) });
  }
});

postMessage({ ready: true });
