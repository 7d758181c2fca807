// Where the device says it is, asked once.

const patience = { enableHighAccuracy: true, maximumAge: 10_000, timeout: 30_000 };

export function find() {
  return new Promise((tell) => {
    if (!("geolocation" in navigator)) {
      tell({ failed: "absent" });
      return;
    }
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) => tell({ latitude, longitude, accuracy }),
      ({ code, PERMISSION_DENIED }) => tell({ failed: code === PERMISSION_DENIED ? "denied" : "unknown" }),
      patience);
  });
}
