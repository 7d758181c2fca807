// The worker's side: the page's own bundle once more, in a runtime that draws nothing.

import { dotnet } from "./_framework/dotnet.js";
import { book, page, thinking } from "./rooms.js";

const { setModuleImports, getAssemblyExports, getConfig, INTERNAL } = await dotnet.create();
const takeUp = (names) => Promise.all(names.map((name) => INTERNAL.loadLazyAssembly(name)));
const needed = [...page, ...book, ...thinking];
await takeUp(needed);
setModuleImports("worker", { told: (share) => postMessage({ share }) });
const exported = await getAssemblyExports("Underturf.FieldApp.Thinking");
const thinker = exported.Underturf.FieldApp.Thinking.Thinker;

/** What draws is fetched before the first task that draws. */
const drawing = new Set(["Papers", "Day", "Locate"]);
const here = new Set(needed);
let fetching = null;
const fetched = () => (fetching ??= takeUp(getConfig().resources.lazyAssembly.map(({ name }) => name).filter((name) => !here.has(name))));

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
