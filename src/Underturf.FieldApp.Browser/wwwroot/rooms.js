// What the runtime starts without (listed in the project file, too): the page itself, then the practice book, for which a note
// waits, then what thinks. The worker takes up all of it before its first task; what draws it fetches with the first that draws.

export const page = ["Underturf.FieldApp.wasm", "Underturf.Answers.wasm", "Underturf.Property.wasm", "Underturf.FieldLog.wasm", "Underturf.Quantities.wasm"];
export const book = ["Underturf.Practice.wasm"];
export const thinking = [
  "Underturf.FieldApp.Thinking.wasm",
  "Underturf.Planning.wasm",
  "Underturf.Reasoning.wasm",
  "Underturf.Networks.wasm",
  "Underturf.Numerics.wasm",
  "System.Runtime.Numerics.wasm",
];

const groups = { page, book, thinking };
const ahead = new Map();
const taken = new Set();
let tell;

/** The page has taken up all that it needs. */
export const whole = new Promise((done) => {
  tell = done;
});

/** Fetches them one group after the other; the runtime is handed what came when it asks for it. */
export async function fetchAhead() {
  for (const group of [page, book, thinking]) {
    await Promise.all(group.map((name) => taken.has(name) || bring(name).catch(() => undefined)));
  }
}

function bring(name) {
  const file = fetch(new URL(`_framework/${name}`, document.baseURI), { cache: "no-cache" });
  ahead.set(name, file);
  return file.then((answer) => answer.clone().arrayBuffer());
}

/** A file that was fetched ahead, once; nothing where it was not, or could not be. */
export function handOver(name) {
  const file = ahead.get(name);
  taken.add(name);
  ahead.delete(name);
  return file;
}

/** Has the page's runtime take them up. Says what kept it from that, or nothing. */
export async function takeUp(group) {
  try {
    await Promise.all(groups[group].map((name) => globalThis.getDotnetRuntime(0).INTERNAL.loadLazyAssembly(name)));
    if (group === "thinking") {
      tell();
    }
    return null;
  } catch (error) {
    return String(error?.message ?? error);
  }
}
