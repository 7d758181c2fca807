// A picture that lies turned and scaled on the plan. It is drawn as it lies, in each frame.

import Layer from "ol/layer/Layer.js";

export function backdropLayer() {
  const canvas = document.createElement("canvas");
  canvas.style.position = "absolute";
  let picture = null;
  let fit = [];
  let opacity = 1;
  const layer = new Layer({
    render: ({ size, pixelRatio, viewState: { center, resolution } }) => {
      [canvas.width, canvas.height] = size.map((side) => Math.round(side * pixelRatio));
      canvas.style.width = `${size[0]}px`;
      canvas.style.height = `${size[1]}px`;
      if (picture?.complete && picture.naturalWidth > 0 && fit.length === 4) {
        const [real, imaginary, east, north] = fit;
        const each = pixelRatio / resolution;
        const pen = canvas.getContext("2d");
        // The layers above may draw on this canvas too: they find its pen as it was.
        pen.save();
        pen.setTransform(
          real * each, -imaginary * each, imaginary * each, real * each,
          (east - center[0]) * each + canvas.width / 2, (center[1] - north) * each + canvas.height / 2);
        pen.globalAlpha = opacity;
        pen.drawImage(picture, 0, 0);
        pen.restore();
      }
      return canvas;
    },
  });
  layer.lay = (address, lies, shines) => {
    [fit, opacity] = [lies, shines];
    if (address === null) {
      picture = null;
    } else if (picture?.src !== address) {
      picture = Object.assign(new Image(), { onload: () => layer.changed(), src: address });
    }
    layer.changed();
  };
  return layer;
}
