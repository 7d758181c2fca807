// Keeps photos on this device, byte for byte as the camera wrote them, in a database of their own, each beside a small picture to
// show. What an answer says is kept is kept: it comes after the transaction has ended.

import { pack, unpack } from "./pack.js";

const database = "underturf-photos";
const version = 1;
const folder = "photos/";
const headBytes = 1 << 19;
const smallPixels = 480;
const smallUrls = new Map();
let opening = null;

/** A picture that the device would not keep: it stays in hand until it is kept or saved as a file. */
let inHand = null;

/** Version 1: "originals" and "small" (pictures by hash), "saved" (hashes of those that stand in a copy elsewhere), "backdrops" (pictures beneath plans, by property). */
function open() {
  return (opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(database, version);
    request.onupgradeneeded = () => ["originals", "small", "saved", "backdrops"].forEach((store) => request.result.createObjectStore(store));
    request.onsuccess = () => {
      request.result.onversionchange = () => (request.result.close(), forget());
      request.result.onclose = forget;
      resolve(request.result);
    };
    request.onerror = () => (forget(), reject(request.error));
  }));
}

function forget() {
  opening = null;
}

/** What a piece of work asked for, once its transaction has ended. */
export async function run(stores, mode, work) {
  const transaction = (await open()).transaction(stores, mode, { durability: "strict" });
  const ended = new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error ?? new DOMException("", "AbortError"));
  });
  const asked = work(...stores.map((store) => transaction.objectStore(store)));
  await ended;
  return asked?.result;
}

/** The name of what kept it from being done, instead of an exception. */
export async function told(work) {
  try {
    return await work();
  } catch (error) {
    return { failed: error?.name ?? String(error) };
  }
}

async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** Takes the picture that was chosen in an input. */
export function take(input) {
  const element = document.getElementById(input);
  inHand = element.files[0] ?? null;
  element.value = "";
  return again();
}

export function again() {
  return told(async () => {
    const bytes = await inHand.arrayBuffer();
    const hash = await keep(bytes, inHand.type);
    inHand = null;
    return { hash, head: new Uint8Array(bytes.slice(0, headBytes)) };
  });
}

/** The original as it is, and a small picture, together or neither. */
async function keep(bytes, media) {
  navigator.storage?.persist?.().catch(() => undefined);
  const hash = await hashOf(bytes);
  const original = new Blob([bytes], { type: media });
  const small = (await shrink(original, smallPixels, 0.8))?.blob ?? null;
  await run(["originals", "small"], "readwrite", (originals, smalls) => {
    originals.put(original, hash);
    if (small !== null) {
      smalls.put(small, hash);
    }
  });
  return hash;
}

/** Upright, as the camera's own note says; nothing where this browser cannot read the form. */
export async function shrink(original, pixels, quality) {
  try {
    const picture = await createImageBitmap(original, { imageOrientation: "from-image" });
    const scale = Math.min(1, pixels / Math.max(picture.width, picture.height));
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const blob = await new Promise((made) => canvas.toBlob(made, "image/jpeg", quality));
    return { blob, width: canvas.width, height: canvas.height };
  } catch {
    return null;
  }
}

/** Address of the small picture; empty where only the original is here, nothing where neither is. */
export async function small(hash) {
  if (smallUrls.has(hash)) {
    return smallUrls.get(hash);
  }
  try {
    const picture = await run(["small"], "readonly", (smalls) => smalls.get(hash));
    if (picture !== undefined) {
      smallUrls.set(hash, URL.createObjectURL(picture));
      return smallUrls.get(hash);
    }
    return (await run(["originals"], "readonly", (originals) => originals.count(hash))) > 0 ? "" : null;
  } catch {
    return null;
  }
}

/** Shows the original over the page, until it is closed. */
export async function show(hash, name, words) {
  const original = await run(["originals"], "readonly", (originals) => originals.get(hash)).catch(() => undefined);
  if (original === undefined) {
    return;
  }
  const url = URL.createObjectURL(original);
  const dialog = document.createElement("dialog");
  dialog.className = "photo-whole";
  dialog.setAttribute("aria-label", words);
  const picture = Object.assign(document.createElement("img"), { src: url, alt: words });
  const caption = Object.assign(document.createElement("p"), { textContent: words });
  picture.onerror = () => picture.replaceWith("This browser cannot show the form of this picture. The original is kept: save it as a file.");
  const foot = document.createElement("div");
  foot.className = "sheet-foot";
  foot.append(
    button("button", "Close", () => dialog.close()),
    button("button quiet", "Save as a file", () => handOut(name, original)));
  dialog.append(foot, picture, caption);
  dialog.onclose = () => (dialog.remove(), URL.revokeObjectURL(url));
  document.body.append(dialog);
  dialog.showModal();
}

function button(className, textContent, onclick) {
  return Object.assign(document.createElement("button"), { type: "button", className, textContent, onclick });
}

function handOut(name, blob) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** The picture that the device would not keep, as a file. */
export function handOutInHand() {
  if (inHand !== null) {
    handOut(inHand.name || "photo.jpg", inHand);
  }
}

/** Those of these, with blanks between, that are here and stand in no copy elsewhere, as far as this device knows. */
export async function unsaved(hashes) {
  try {
    const saved = new Set(await run(["saved"], "readonly", (store) => store.getAllKeys()));
    const kept = new Set(await run(["originals"], "readonly", (store) => store.getAllKeys()));
    return hashes.filter((hash) => kept.has(hash) && !saved.has(hash)).join(" ");
  } catch {
    return "";
  }
}

/** Takes pictures off this device, for good. */
export function takeOff(hashes) {
  return told(async () => {
    const stores = ["originals", "small", "saved"];
    await run(stores, "readwrite", (...each) => each.forEach((store) => hashes.forEach((hash) => store.delete(hash))));
    hashes.forEach((hash) => (URL.revokeObjectURL(smallUrls.get(hash)), smallUrls.delete(hash)));
    return {};
  });
}

/** Hands out a log and its photos as one file; those that are not on this device are left out. */
export function handOutPack(name, logName, log, names, hashes) {
  return told(async () => {
    const files = [{ name: logName, blob: new Blob([log]) }];
    const packed = [];
    for (const [at, hash] of hashes.entries()) {
      const blob = await run(["originals"], "readonly", (originals) => originals.get(hash));
      if (blob !== undefined) {
        files.push({ name: names[at], blob });
        packed.push(hash);
      }
    }
    handOut(name, await pack(files));
    await markSaved(packed);
    return { packed: packed.length };
  });
}

/** Takes in the photos of a pack whose bytes are those that their names say, and gives the log in it. */
export function takeInPack(input) {
  return told(async () => {
    const files = await unpack(document.getElementById(input).files[0]);
    const logs = files.filter(({ name }) => name.endsWith(".jsonl") && !name.includes("/"));
    if (logs.length !== 1) {
      throw new DOMException("", "NotFoundError");
    }
    for (const { name, blob } of files.filter((file) => file.name.startsWith(folder))) {
      const bytes = await (await blob()).arrayBuffer();
      const hash = await hashOf(bytes);
      if (name.startsWith(folder + hash)) {
        await keep(bytes, "");
        await markSaved([hash]);
      }
    }
    return { log: new Uint8Array(await (await logs[0].blob()).arrayBuffer()) };
  });
}

function markSaved(hashes) {
  return run(["saved"], "readwrite", (saved) => hashes.forEach((hash) => saved.put(true, hash)));
}
