// How things look: by kind their symbol or fill, by grade their line (solid measured, dashed inferred, dotted told, hollow unknown).

import { Circle as Disc, Fill, Icon, Stroke, Style, Text } from "ol/style.js";
import { covered, placeFigures } from "./figures.js";
import { dashes, symbol } from "./symbols.js";

const fills = { lawn: "ground-lawn", bed: "ground-bed", hardscape: "ground-hardscape", building: "ground-building", water: "ground-water", tree: "ground-tree" };
const widths = { wall: 5, "utility mark": 2.5, cable: 2.5, pipe: 6 };
const rank = ["other", "water", "lawn", "bed", "hardscape", "building", "wall", "roots", "utility mark", "tree", "pipe", "cable", "valve", "box", "box with valves", "master valve", "isolation valve", "point of connection", "controller"];
/** Seen from afar, signs are smaller: metres a pixel, and how much of their size is left. */
const [afarMetres, afarSize] = [0.6, 0.7];
const size = (metresPerPixel) => (metresPerPixel > afarMetres ? afarSize : 1);
const density = () => Math.max(2, Math.ceil(devicePixelRatio));

/** How far the figure of a ring stands from its middle, and half of a sign, in pixels of the full size. */
const [figureReach, signHalf] = [24, 12];

/** The figures that are shown, and where; worked out once for a scale. */
export function figureLayout() {
  let [figures, signs, kept] = [[], [], null];
  return {
    show(marks, points) {
      [figures, signs, kept] = [marks, points, null];
    },
    at(metresPerPixel) {
      if (kept?.of !== metresPerPixel) {
        const scale = size(metresPerPixel);
        kept = { of: metresPerPixel, places: placeFigures(figures, signs, metresPerPixel, figureReach * scale + 2, signHalf * scale) };
      }
      return kept.places;
    },
  };
}

export function featureStyle(look, layout) {
  const kept = {};
  const name = words(look, look.ink, 600);
  const surface = words(look, look["ink-soft"], 400);
  return (thing, metresPerPixel) => {
    const { kind, grade, form, name: label } = thing.getProperties();
    const scale = size(metresPerPixel);
    const styles = (kept[`${kind} ${grade} ${form} ${scale}`] ??= form === "point" ? pointStyles(kind, grade, scale, look) : shapeStyles(kind, grade, form, look));
    const buried = form === "point" && kind !== "tree" && kind !== "other";
    const below = form === "point" ? 26 * scale : 0;
    const [east, north] = form === "line" ? [NaN, NaN] : (form === "point" ? thing.getGeometry() : thing.getGeometry().getInteriorPoint()).getCoordinates();
    const text = label === "" || covered(layout.at(metresPerPixel), east, north, below, label, metresPerPixel) ? [] : [(buried ? name : surface)(label, below, rank.indexOf(kind))];
    return [...styles, ...text];
  };
}

function pointStyles(kind, grade, scale, look) {
  const image = new Icon({ img: symbol(kind, grade, look, density()), scale: scale / density(), declutterMode: "obstacle" });
  return [new Style({ image, zIndex: 100 + rank.indexOf(kind) })];
}

function shapeStyles(kind, grade, form, look) {
  const width = widths[kind] ?? 2;
  const colour = { cable: look.ink, "utility mark": look.ink, pipe: look["ink-soft"] }[kind] ?? look["ground-edge"];
  const fill = form === "outline" ? new Fill({ color: kind === "roots" ? `${look["ground-tree"]}59` : look[fills[kind]] ?? look.sheet }) : undefined;
  const zIndex = rank.indexOf(kind);
  const edge = new Stroke({ color: colour, width: grade === "unknown" ? width + 2.5 : width, lineDash: kind === "utility mark" ? [16, 4, 2, 4, 2, 4] : dashes(grade, width + 1), lineCap: grade === "told" ? "round" : "butt" });
  const hollow = grade === "unknown" ? [new Style({ stroke: new Stroke({ color: look.ground, width: width - 0.5 }), zIndex })] : [];
  return [new Style({ fill, stroke: edge, zIndex }), ...hollow];
}

/** Names give way to each other, those of buried things last. */
function words(look, colour, weight) {
  return (text, below, zIndex) => new Style({
    zIndex: 200 + zIndex,
    text: new Text({ text, font: `${weight} 16px ${look.face}`, fill: new Fill({ color: colour }), stroke: new Stroke({ color: look.ground, width: 4 }), offsetY: below, overflow: true, padding: [1, 3, 1, 3] }),
  });
}

/** The next move is a pointer; a suspected place is ringed, dashed, because it is inferred. */
export function markStyle(look, layout) {
  return (mark, metresPerPixel) => {
    const { next, name, figure } = mark.getProperties();
    const scale = size(metresPerPixel);
    const place = layout.at(metresPerPixel)[figure] ?? null;
    const text = (offsetX, offsetY, textAlign) => new Text({
      declutterMode: "obstacle", text: name, font: `700 ${scale < 1 ? 15 : 17}px ${look.face}`, fill: new Fill({ color: look.accent }), stroke: new Stroke({ color: look.sheet, width: 3 }), backgroundFill: new Fill({ color: `${look.ground}99` }), padding: [0, 3, 0, 3], offsetX, offsetY, textAlign,
    });
    if (mark.getGeometry().getType() === "LineString") {
      return [new Style({ stroke: new Stroke({ color: look.accent, width: 6, lineDash: [14, 9], lineCap: "butt" }), text: place ? text(...place.offset, place.textAlign) : undefined })];
    }
    return next
      ? [new Style({ image: pointer(look, scale), text: text(...place.offset, place.textAlign) })]
      : [new Style({ image: new Disc({ radius: 19 * scale, declutterMode: "none", stroke: new Stroke({ color: look.accent, width: 4, lineDash: [9, 6] }) }), text: place ? text(...place.offset, place.textAlign) : undefined })];
  };
}

function pointer(look, scale) {
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [32 * density(), 26 * density()];
  const pen = canvas.getContext("2d");
  pen.scale(density(), density());
  pen.beginPath();
  pen.moveTo(3, 2);
  pen.lineTo(29, 2);
  pen.lineTo(16, 24);
  pen.closePath();
  pen.fillStyle = look.accent;
  pen.fill();
  pen.strokeStyle = look.sheet;
  pen.lineWidth = 2;
  pen.stroke();
  return new Icon({ img: canvas, declutterMode: "none", scale: 1 / density(), anchor: [0.5, 1], displacement: [0, 20 * scale] });
}

export function haloStyle(look) {
  const line = new Style({ stroke: new Stroke({ color: look.accent, width: 9 }) });
  const ring = (scale) => new Style({ image: new Disc({ radius: 24 * scale, fill: new Fill({ color: look.sheet }), stroke: new Stroke({ color: look.accent, width: 4 }) }) });
  return (chosen, metresPerPixel) => (chosen.get("form") === "point" ? ring(size(metresPerPixel)) : line);
}

/** Inferred, so dashed; a dot in the middle. */
export function hereStyle(look) {
  return new Style({
    stroke: new Stroke({ color: look.accent, width: 2.5, lineDash: [9, 6] }),
    fill: new Fill({ color: `${look.accent}1a` }),
    image: new Disc({ radius: 8, fill: new Fill({ color: look.accent }), stroke: new Stroke({ color: look.sheet, width: 3 }) }),
  });
}

/** Thin, as a tape lies; the figure along it where there is room. */
export function tieStyle(look) {
  return (tie) => new Style({
    stroke: new Stroke({ color: look["ink-soft"], width: 1.5, lineDash: dashes(tie.get("grade"), 2) }),
    text: new Text({ text: tie.get("name"), placement: "line", font: `600 14px ${look.face}`, fill: new Fill({ color: look.ink }), stroke: new Stroke({ color: look.ground, width: 4 }), textBaseline: "bottom" }),
  });
}

/** A stop has its number; the way between is no more than a plan. */
export function routeStyle(look) {
  const way = new Style({ stroke: new Stroke({ color: look.ink, width: 2, lineDash: [2, 6], lineCap: "round" }) });
  const disc = new Disc({ radius: 13, fill: new Fill({ color: look.ink }), stroke: new Stroke({ color: look.sheet, width: 2 }) });
  return (drawn) => (drawn.getGeometry().getType() === "LineString" ? way : new Style({
    image: disc,
    zIndex: -Number(drawn.get("name")),
    text: new Text({ text: drawn.get("name"), font: `700 15px ${look.face}`, fill: new Fill({ color: look.sheet }) }),
  }));
}

export function sketchStyle(look) {
  const dot = new Disc({ radius: 7, fill: new Fill({ color: look.accent }), stroke: new Stroke({ color: look.sheet, width: 2 }) });
  const stroke = new Stroke({ color: look.accent, width: 4 });
  return (drawn) => new Style({
    stroke,
    image: dot,
    text: new Text({ text: drawn.get("name") ?? "", font: `700 18px ${look.face}`, fill: new Fill({ color: look.accent }), stroke: new Stroke({ color: look.sheet, width: 5 }), offsetY: -20, overflow: true }),
  });
}
