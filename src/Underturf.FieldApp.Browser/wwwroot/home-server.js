// The page's side of the server that it came from: what this device must say to be let at the log, and when to ask again.

const kept = "underturf-pairing";
const whileMilliseconds = 30_000;

/** The pairing secret, from the address that the server's code gave, else from the time before; kept out of the address bar and of its history. */
export function pairing() {
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
