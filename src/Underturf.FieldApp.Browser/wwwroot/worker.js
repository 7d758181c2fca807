// The worker's side: the page's own bundle once more, in a runtime that draws nothing.

import { dotnet } from "./_framework/dotnet.js";

const { setModuleImports, getAssemblyExports, getConfig } = await dotnet.create();
setModuleImports("worker", { told: (share) => postMessage({ share }) });
const exported = await getAssemblyExports(getConfig().mainAssemblyName);
const thinker = exported.Underturf.FieldApp.Browser.Thinker;

addEventListener("message", ({ data }) => {
  try {
    const answer = data.about ? thinker[data.task](data.log, data.about) : thinker[data.task](data.log);
    postMessage({ answer }, [answer.buffer]);
  } catch (error) {
    postMessage({ failed: String(error?.message ?? error) });
  }
});

postMessage({ ready: true });
