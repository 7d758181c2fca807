// A bar of a round length in the property's units.

const longestPixels = 130;
const footMetres = 0.3048;

export function scaleBar(map, target, feet) {
  const bar = document.createElement("div");
  bar.className = "scale-bar";
  target.append(bar);
  map.on("moveend", () => {
    const pixelsEach = (feet ? footMetres : 1) / map.getView().getResolution();
    const length = round(longestPixels / pixelsEach);
    bar.style.inlineSize = `${length * pixelsEach}px`;
    bar.textContent = `${Number(length.toPrecision(2))} ${feet ? "ft" : "m"}`;
  });
}

/** The largest of 1, 2, 5 times a power of ten that is not above. */
function round(most) {
  const power = 10 ** Math.floor(Math.log10(most));
  return (most / power >= 5 ? 5 : most / power >= 2 ? 2 : 1) * power;
}
