// Keeps the lines of field logs on this device, byte for byte, in the browser's own database. What an answer says is stored
// is stored: an answer comes after the transaction has ended, and the transaction is asked to reach the disk.

const database = "underturf";
const version = 1;
const lineFeed = 10;
const news = new BroadcastChannel("underturf-notes");
const held = new Map();
let holds = 0;
let opening = null;
let queue = Promise.resolve();

/** Version 1: "lines" (one record a line, numbered in the order of storing), "written" (the entries of this device, each once), "logs", "device". */
function open() {
  return (opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(database, version);
    request.onupgradeneeded = () => {
      const lines = request.result.createObjectStore("lines", { keyPath: "number", autoIncrement: true });
      lines.createIndex("log", ["log", "number"]);
      request.result.createObjectStore("written", { keyPath: ["log", "writer", "seq"] });
      request.result.createObjectStore("logs", { keyPath: "property" });
      request.result.createObjectStore("device");
    };
    request.onsuccess = () => {
      const opened = request.result;
      // A newer page needs another form of the database: this one steps back and says so at the next note.
      opened.onversionchange = () => (opened.close(), forget());
      opened.onclose = forget;
      resolve(opened);
    };
    request.onerror = () => (forget(), reject(request.error));
  }));
}

/** Opens the database while the page still starts; whoever asks for something says what keeps it from being opened. */
export function openAhead() {
  open().catch(() => undefined);
}

function forget() {
  opening = null;
}

/** What a piece of work gives once its transaction has ended, or the name of what kept it from ending. */
async function run(stores, mode, work) {
  try {
    const transaction = (await open()).transaction(stores, mode, { durability: "strict" });
    const ended = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error ?? new DOMException("", "AbortError"));
    });
    const given = Promise.resolve(work(transaction));
    given.catch(() => transaction.error ?? giveUp(transaction));
    await ended;
    return (await given) ?? {};
  } catch (error) {
    return { failed: error?.name ?? String(error) };
  }
}

/** A piece of work that fails leaves nothing behind. */
function giveUp(transaction) {
  try {
    transaction.abort();
  } catch {
    // It has ended already.
  }
}

function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

export async function state() {
  const drawn = [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  const promised = (await navigator.storage?.persisted?.().catch(() => false)) ?? false;
  const said = await run(["device", "logs"], "readwrite", async (transaction) => {
    const device = transaction.objectStore("device");
    const writer = (await answer(device.get("writer"))) ?? `page-${drawn}`;
    device.put(writer, "writer");
    const logs = await answer(transaction.objectStore("logs").getAll());
    return { json: JSON.stringify({ writer, open: await answer(device.get("open")), desk: await answer(device.get("desk")), promised, logs }) };
  });
  return said;
}

export function read(log, after) {
  return run(["lines"], "readonly", async (transaction) => {
    const range = IDBKeyRange.bound([log, after], [log, Infinity], true);
    const found = await answer(transaction.objectStore("lines").index("log").getAll(range));
    const bytes = new Uint8Array(found.reduce((sum, { line }) => sum + line.length + 1, 0));
    let end = 0;
    for (const { line } of found) {
      bytes.set(line, end);
      bytes[end + line.length] = lineFeed;
      end += line.length + 1;
    }
    return { bytes, last: found.at(-1)?.number ?? after };
  });
}

/** Lines, and with them the desk as it lies once they are stored: a page that is killed finds both or neither. */
export async function add(log, lines, writer, seq, desk) {
  navigator.storage?.persist?.().catch(() => undefined);
  const said = await run(["lines", "written", "logs", "device"], "readwrite", async (transaction) => {
    if (writer !== null && (await answer(transaction.objectStore("logs").get(log)))?.isGone) {
      throw new DOMException("", "GoneError");
    }
    if (desk !== null) {
      transaction.objectStore("device").put(desk, "desk");
    }
    return put(transaction, log, lines, (nth) => writer !== null && transaction.objectStore("written").add({ log, writer, seq: seq + nth }));
  });
  return tell(log, said);
}

export async function replace(log, lines) {
  const said = await run(["lines"], "readwrite", async (transaction) => {
    await clear(transaction, log);
    return put(transaction, log, lines);
  });
  return tell(log, said);
}

async function put(transaction, log, lines, claim = () => undefined) {
  const store = transaction.objectStore("lines");
  let last = null;
  for (let from = 0, nth = 0, end; (end = lines.indexOf(lineFeed, from)) >= 0; from = end + 1, nth++) {
    claim(nth);
    last = store.add({ log, line: lines.slice(from, end) });
  }
  return { last: last === null ? 0 : await answer(last) };
}

function tell(log, said) {
  if (said.failed === undefined) {
    news.postMessage(log);
  }
  return said;
}

/** What is known of a log besides its lines, as JSON. */
export function remember(log, isOpen) {
  const known = JSON.parse(log);
  return run(["logs", "device"], "readwrite", (transaction) => {
    transaction.objectStore("logs").put(known);
    if (isOpen) {
      transaction.objectStore("device").put(known.property, "open");
    }
  });
}

/** Takes the lines of a log off the device; that it was here stays, so that no other page goes on writing in it. */
export function remove(log) {
  const gone = JSON.parse(log);
  return run(["lines", "written", "logs"], "readwrite", async (transaction) => {
    transaction.objectStore("logs").put(gone);
    transaction.objectStore("written").delete(IDBKeyRange.bound([gone.property], [gone.property, []]));
    await clear(transaction, gone.property);
  });
}

async function clear(transaction, log) {
  const kept = transaction.objectStore("lines");
  for (const number of await answer(kept.index("log").getAllKeys(IDBKeyRange.bound([log, 0], [log, Infinity])))) {
    kept.delete(number);
  }
}

/** What is typed and not stored; the page of another tab may keep its own over it. */
export function keepDesk(desk) {
  return run(["device"], "readwrite", (transaction) => {
    transaction.objectStore("device").put(desk, "desk");
  });
}

/** One page at a time, whatever happens to the others: a page that ends lets go. */
export function hold() {
  return new Promise((granted) => {
    alone(() => new Promise((letGo) => {
      held.set(++holds, letGo);
      granted(holds);
    }));
  });
}

export function release(number) {
  held.get(number)?.();
  held.delete(number);
}

/** Where there is no lock between pages there is one within the page, and the unique key between them. */
function alone(work) {
  if (navigator.locks) {
    navigator.locks.request("underturf-notes", work);
  } else {
    queue = queue.then(work);
  }
}

export function listen(told) {
  news.addEventListener("message", ({ data }) => told(data));
}

export function showHead() {
  scrollTo(0, 0);
}

const forms = { jsonl: "application/jsonl", pdf: "application/pdf", svg: "image/svg+xml" };

export function handOut(name, bytes) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes], { type: forms[name.split(".").at(-1)] ?? "application/octet-stream" }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}
