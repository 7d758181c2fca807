// The map of the place Ground: draws what the page describes, tells where it was tapped. It decides nothing.

import Map from "ol/Map.js";
import View from "ol/View.js";
import Feature from "ol/Feature.js";
import Projection from "ol/proj/Projection.js";
import VectorLayer from "ol/layer/Vector.js";
import VectorImageLayer from "ol/layer/VectorImage.js";
import VectorSource from "ol/source/Vector.js";
import { Circle, LineString, Point, Polygon } from "ol/geom.js";
import { defaults } from "ol/interaction.js";
import { featureStyle, figureLayout, haloStyle, hereStyle, markStyle, routeStyle, sketchStyle, tieStyle } from "./look.js";
import { backdropLayer } from "./backdrop.js";
import { readTokens } from "./tokens.js";
import { scaleBar } from "./scale-bar.js";

/** Metres east and north of the property's datum: flat, and nothing of the earth. */
const plane = new Projection({ code: "local-metres", units: "m" });
const finestMetres = 0.01;
const coarsestMetres = 50;
/** Of a search no nearer than this: what is beside the stops is seen too. */
const nearStops = 0.15;
/** Above for the pointer of the next move, below for scale and buttons, beside for names. */
const room = [64, 56, 76, 56];

let map = null;
let layers = null;
let whole = null;
let left = null;
let property = "";
let layout = null;
let heated = null;

export function open(element, of, feet, tapped) {
  close();
  left = left?.of === of ? left : null;
  property = of;
  const target = document.getElementById(element);
  const look = readTokens(target);
  layout = figureLayout();
  // Things are painted once and moved as a picture while a hand drags or zooms: thousands of them cost no time in between.
  layers = {
    things: new VectorImageLayer({ source: new VectorSource(), style: featureStyle(look, layout), declutter: true, imageRatio: 1.5 }),
    backdrop: backdropLayer(),
    here: layer(hereStyle(look)),
    heat: backdropLayer(),
    route: layer(routeStyle(look)),
    marks: layer(markStyle(look, layout), { declutter: true }),
    ties: layer(tieStyle(look), { declutter: true }),
    halo: layer(haloStyle(look)),
    sketch: layer(sketchStyle(look), { zIndex: 2 }),
  };
  map = new Map({
    target,
    controls: [],
    interactions: defaults({ doubleClickZoom: false, altShiftDragRotate: false, pinchRotate: false, shiftDragZoom: false }),
    layers: [layers.backdrop, layers.halo, layers.things, layers.heat, layers.ties, layers.here, layers.marks, layers.route, layers.sketch],
    view: new View({ projection: plane, enableRotation: false, minResolution: finestMetres, maxResolution: coarsestMetres, center: left?.center ?? [0, 0], resolution: left?.resolution ?? 0.5 }),
  });
  listen(target, tapped);
  map.on("moveend", () => {
    target.dataset.resolution = map.getView().getResolution();
    target.dataset.middle = map.getView().getCenter().join(" ");
  });
  scaleBar(map, target, feet);
}

/**
 * The map knows a tap from a drag when the finger leaves it, but the browser's own click comes after that: told before it, a card that
 * opens would get the click.
 */
function listen(target, tapped) {
  let at = null;
  map.on("click", ({ coordinate }) => {
    at = coordinate;
  });
  target.addEventListener("click", () => {
    if (at !== null) {
      const [east, north] = at;
      at = null;
      tapped(east, north, map.getView().getResolution());
    }
  });
}

function layer(style, more = {}) {
  return new VectorLayer({ source: new VectorSource(), style, updateWhileInteracting: false, updateWhileAnimating: false, ...more });
}

/** Everything on the ground at once: of each thing its kind, grade, name, form and number of positions, the positions one behind the other. */
export function draw(kinds, grades, names, forms, counts, metres, extent) {
  const things = [];
  let at = 0;
  counts.forEach((count, i) => {
    const line = positions(metres, at, count);
    at += 2 * count;
    things.push(new Feature({ geometry: shape(forms[i], line), kind: kinds[i], grade: grades[i], name: names[i], form: forms[i], index: i }));
  });
  replace(layers.things, things);
  layOut();
  whole = extent.length === 4 ? [...extent] : null;
  map.getTargetElement().dataset.things = String(things.filter((thing) => thing.get("kind") !== "roots").length);
  if (left === null) {
    showWhole();
  }
}

/** Where the next move is and where the leading explanations put a fault. */
export function mark(nexts, labels, counts, metres) {
  let at = 0;
  replace(layers.marks, Array.from(counts, (count, i) => {
    const line = positions(metres, at, count);
    at += 2 * count;
    return new Feature({ geometry: shape(count > 1 ? "line" : "point", line), next: nexts[i] === "next", name: labels[i], figure: i });
  }));
  layOut();
}

/** Figures are placed anew for what is drawn now: the likeliest first, as they come. */
function layOut() {
  const points = layers.things.getSource().getFeatures().filter((thing) => thing.get("form") === "point").map((thing) => thing.getGeometry().getCoordinates());
  const middle = (geometry) => (geometry.getType() === "Point" ? geometry.getCoordinates() : geometry.getCoordinateAt(0.5));
  const figures = layers.marks.getSource().getFeatures().sort((a, b) => a.get("figure") - b.get("figure")).map((mark) => {
    const [east, north] = middle(mark.getGeometry());
    return { east, north, text: mark.get("name"), next: mark.get("next") };
  });
  layout.show(figures, points);
  layers.things.changed();
}

/** Taped distances: from mark to thing, or the circle on which the thing lies. */
export function tie(grades, labels, counts, metres) {
  let at = 0;
  replace(layers.ties, Array.from(counts, (count, i) => {
    const line = positions(metres, at, count);
    at += 2 * count;
    return new Feature({ geometry: new LineString(line), grade: grades[i], name: labels[i] });
  }));
}

/** A picture: beneath the plan, or over it and shining through while it is laid. */
export function lay(address, fit, beneath) {
  layers.backdrop.lay(address, fit, beneath ? 0.75 : 0.55);
  layers.backdrop.setZIndex(beneath ? 0 : 1);
  map.getTargetElement().dataset.backdrop = String(address !== null);
}

/** Likely ground: a picture of so many metres a pixel, its north-west corner laid where that is; none takes it away. */
export function heat(picture, lies) {
  URL.revokeObjectURL(heated);
  heated = picture.length > 0 ? URL.createObjectURL(new Blob([picture], { type: "image/png" })) : null;
  const [metres, east, north] = lies;
  layers.heat.lay(heated, heated === null ? null : [metres, 0, east, north], 1);
  map.getTargetElement().dataset.heat = String(heated !== null);
}

/** The stops of a search in their order, numbered. Where the search is another one, the map turns to its stops. */
export function route(metres, turns) {
  const stops = positions(metres, 0, metres.length / 2);
  if (turns && stops.length > 0) {
    turnTo(stops);
  }
  const numbered = stops.map((at, i) => new Feature({ geometry: new Point(at), name: String(i + 1) }));
  replace(layers.route, stops.length > 1 ? [new Feature({ geometry: new LineString(stops) }), ...numbered] : numbered);
  map.getTargetElement().dataset.stops = String(stops.length);
}

function turnTo(stops) {
  const [west, south, east, north] = new LineString(stops).getExtent();
  map.updateSize();
  map.getView().fit([west, south, east, north], { padding: room, minResolution: nearStops });
}

/** Where the device says it is: a dot, and the circle in which it may be. */
export function here(east, north, accuracy) {
  replace(layers.here, [new Feature(new Circle([east, north], accuracy)), new Feature(new Point([east, north]))]);
  bringIntoSight(new Point([east, north]));
}

/** A ring around the thing that is chosen; none where the number is below zero. */
export function choose(index) {
  const chosen = layers.things.getSource().getFeatures().find((thing) => thing.get("index") === index);
  replace(layers.halo, chosen ? [new Feature({ geometry: chosen.getGeometry(), form: chosen.get("form") })] : []);
  if (chosen) {
    bringIntoSight(chosen.getGeometry());
  }
}

/** What is being placed or measured. */
export function sketch(metres, closed, label) {
  const line = positions(metres, 0, metres.length / 2);
  const form = closed && line.length > 2 ? "outline" : line.length > 1 ? "line" : "point";
  const points = line.map((at) => new Feature({ geometry: new Point(at) }));
  replace(layers.sketch, line.length === 0 ? [] : [new Feature({ geometry: shape(form, line), name: label }), ...points]);
}

export function middle() {
  return [...map.getView().getCenter(), map.getView().getResolution()];
}

export function zoom(steps) {
  map.getView().setResolution(map.getView().getConstrainedResolution(map.getView().getResolution() / 2 ** steps));
}

export function showWhole() {
  if (whole !== null) {
    map.updateSize();
    map.getView().fit(whole, { padding: room, minResolution: 0.02 });
  }
}

/** Where the map stood is kept for the next time; another property begins with its whole. */
export function close() {
  if (map !== null) {
    left = whole === null ? null : { of: property, center: map.getView().getCenter(), resolution: map.getView().getResolution() };
    map.setTarget(null);
    map.dispose();
    map = null;
  }
}

function bringIntoSight(geometry) {
  const [west, south, east, north] = map.getView().calculateExtent(map.getSize());
  const [x, y] = geometry.getClosestPoint([(west + east) / 2, (south + north) / 2]);
  if (x < west || x > east || y < south || y > north) {
    map.getView().setCenter([x, y]);
  }
}

function replace(of, features) {
  of.getSource().clear(true);
  of.getSource().addFeatures(features);
}

function positions(metres, at, count) {
  return Array.from({ length: count }, (_, i) => [metres[at + 2 * i], metres[at + 2 * i + 1]]);
}

function shape(form, line) {
  return form === "outline" ? new Polygon([[...line, line[0]]]) : form === "line" ? new LineString(line) : new Point(line[0]);
}
