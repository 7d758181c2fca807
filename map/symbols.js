// Plain symbols, drawn once each: two triangles tip to tip for a valve (ISO 14617), barred where it is turned by hand, a square for a box, a framed plate for the
// controller, a circle with an arrow for the point of connection, a ring with a trunk for a tree. The edge says how the thing is known.

const side = 34;
const kept = {};

export function dashes(grade, width) {
  return { told: [width * 0.5, width * 2], inferred: [width * 2.5, width * 1.6], estimated: [width * 2.5, width * 1.6] }[grade] ?? [];
}

/** A canvas with the symbol in its middle. */
export function symbol(kind, grade, look, density) {
  return (kept[`${kind} ${grade} ${density}`] ??= paint(kind, grade, look, density));
}

function paint(kind, grade, look, density) {
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = side * density;
  const pen = canvas.getContext("2d");
  pen.scale(density, density);
  pen.translate(side / 2, side / 2);
  pen.lineJoin = "round";
  const edge = new Path2D();
  (outlines[kind === "box with valves" ? "box" : kind] ?? outlines.other)(edge);
  if (kind === "isolation valve") {
    // The pipe that it sits in does not run through its sign: dotted, that would be unreadable.
    pen.fillStyle = look.ground;
    pen.fillRect(-13, -9, 26, 18);
  }
  pen.fillStyle = kind === "tree" ? look["ground-tree"] : look.sheet;
  pen.fill(edge);
  stroke(pen, edge, grade, look);
  inside(pen, kind, look);
  return canvas;
}

const outlines = {
  controller: (path) => path.rect(-13, -10, 26, 20),
  box: (path) => path.rect(-10, -10, 20, 20),
  valve: (path) => bowTie(path, 12, 8),
  "master valve": (path) => (bowTie(path, 12, 8), path.moveTo(0, 0), path.lineTo(0, -11), path.moveTo(-6, -11), path.lineTo(6, -11)),
  "isolation valve": (path) => bowTie(path, 12, 8),
  "point of connection": (path) => path.arc(0, 0, 11, 0, 2 * Math.PI),
  tree: (path) => path.arc(0, 0, 12, 0, 2 * Math.PI),
  other: (path) => (path.moveTo(0, -9), path.lineTo(9, 0), path.lineTo(0, 9), path.lineTo(-9, 0), path.closePath()),
};

function bowTie(path, half, high) {
  path.moveTo(-half, -high);
  path.lineTo(half, high);
  path.lineTo(half, -high);
  path.lineTo(-half, high);
  path.closePath();
}

/** Hollow: the edge itself is empty within. */
function stroke(pen, edge, grade, look) {
  pen.strokeStyle = look.ink;
  pen.lineWidth = grade === "unknown" ? 5 : 2.5;
  pen.setLineDash(dashes(grade, 2));
  pen.stroke(edge);
  pen.setLineDash([]);
  if (grade === "unknown") {
    pen.strokeStyle = look.sheet;
    pen.lineWidth = 2;
    pen.stroke(edge);
  }
}

function inside(pen, kind, look) {
  pen.fillStyle = look.ink;
  if (kind === "controller") {
    pen.fillRect(-13, -10, 26, 6);
  } else if (kind === "box with valves") {
    const valve = new Path2D();
    bowTie(valve, 6, 4.5);
    pen.fill(valve);
  } else if (kind === "isolation valve") {
    pen.fillRect(-1.5, -10, 3, 20);
  } else if (kind === "point of connection") {
    const arrow = new Path2D("M-5-6L7 0L-5 6Z");
    pen.fill(arrow);
  } else if (kind === "tree") {
    pen.beginPath();
    pen.arc(0, 0, 3, 0, 2 * Math.PI);
    pen.fill();
  }
}
