// The page's side of the server that it came from: its log, what this device must say to be let at it, and when to ask again.

const kept = "underturf-pairing";
const whileMilliseconds = 30_000;
const longestMilliseconds = 100_000;
let ahead = null;
let secret = null;

/** Asks for the log while the page still starts; the first who wants it has what came. */
export function pullAhead() {
  ahead ??= ask({});
}

/** The server's log and whether it takes notes, or with "failed" the status that it gave, or that it gave none. */
export function pull() {
  const asked = ahead ?? ask({});
  ahead = null;
  return asked;
}

/** Hands lines to it. Its answer as text, or "failed" as above. */
export function push(lines) {
  return ask({ method: "POST", body: lines, headers: { "Content-Type": "application/jsonl" } });
}

async function ask(what) {
  try {
    secret ??= pairing();
    const headers = secret === null ? what.headers : { ...what.headers, Authorization: `Bearer ${secret}` };
    const answer = await fetch(new URL("log.jsonl", document.baseURI), { ...what, headers, cache: "no-store", signal: AbortSignal.timeout(longestMilliseconds) });
    return !answer.ok ? { failed: String(answer.status) }
      : what.method === "POST" ? { text: await answer.text() }
      : { bytes: new Uint8Array(await answer.arrayBuffer()), takesNotes: (answer.headers.get("Allow") ?? "").includes("POST") };
  } catch (error) {
    return { failed: error?.name ?? String(error) };
  }
}

/** The pairing secret, from the address that the server's code gave, else from the time before; kept out of the address bar and of its history. */
function pairing() {
  const given = /^#pair=([\w-]+)$/.exec(location.hash)?.[1];
  if (given !== undefined) {
    history.replaceState(null, "", location.pathname + location.search);
  }
  try {
    if (given !== undefined) {
      localStorage.setItem(kept, given);
    }
    return given ?? localStorage.getItem(kept);
  } catch {
    // A page that may keep nothing is paired for as long as it is open.
    return given ?? null;
  }
}

/** The device is on line again, the page is looked at again, or a while has passed under somebody's eyes. */
export function listen(told) {
  const tell = () => document.visibilityState === "visible" && told();
  addEventListener("online", tell);
  document.addEventListener("visibilitychange", tell);
  setInterval(tell, whileMilliseconds);
}
