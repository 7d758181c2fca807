// Tells the page when the server that it came from may be back or may have something new: the device is on line again, the
// page is looked at again, or a while has passed under somebody's eyes.

const whileMilliseconds = 30_000;

export function listen(told) {
  const tell = () => document.visibilityState === "visible" && told();
  addEventListener("online", tell);
  document.addEventListener("visibilitychange", tell);
  setInterval(tell, whileMilliseconds);
}
