// The picture beneath the plan of a property, small enough to be moved under a hand, and how it lies; in the database of the photos.

import { run, shrink, told } from "./photos.js";

const mostPixels = 2048;
const addresses = new Map();

export function take(property, input) {
  return told(async () => {
    const element = document.getElementById(input);
    const file = element.files[0];
    element.value = "";
    const picture = await shrink(file, mostPixels, 0.9);
    if (picture === null) {
      throw new DOMException("", "NotReadableError");
    }
    await run(["backdrops"], "readwrite", (store) => store.put({ picture: picture.blob }, property));
    forgetAddress(property);
    return { width: picture.width, height: picture.height };
  });
}

export function find(property, name) {
  return told(async () => {
    const kept = (await run(["backdrops"], "readonly", (store) => store.get(property))) ?? (await takeOver(property, name));
    if (kept?.laid === undefined) {
      return {};
    }
    if (!addresses.has(property)) {
      addresses.set(property, URL.createObjectURL(kept.picture));
    }
    return { laid: kept.laid, address: addresses.get(property) };
  });
}

/** A picture that an earlier build kept under the name of the property is kept under its id from now on. */
async function takeOver(property, name) {
  const kept = name === property ? undefined : await run(["backdrops"], "readonly", (store) => store.get(name));
  if (kept !== undefined) {
    await run(["backdrops"], "readwrite", (store) => (store.put(kept, property), store.delete(name)));
  }
  return kept;
}

export function keep(property, laid) {
  return told(async () => {
    const kept = await run(["backdrops"], "readonly", (store) => store.get(property));
    await run(["backdrops"], "readwrite", (store) => store.put({ ...kept, laid }, property));
    return {};
  });
}

export function forget(property) {
  return told(async () => {
    await run(["backdrops"], "readwrite", (store) => store.delete(property));
    forgetAddress(property);
    return {};
  });
}

function forgetAddress(property) {
  URL.revokeObjectURL(addresses.get(property));
  addresses.delete(property);
}
