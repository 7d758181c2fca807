// Where the figures of marks stand: beside their ring, on the side where they cover least; a less likely one that would lie on another
// is left out. The list beside the map says them all.

const [letterPixels, highPixels] = [9.5, 20];
const coveringSign = 1, coveringFigure = 10, worst = 10;

/** Sides in the order in which they are liked: what a text there is aligned by, and where its box begins. */
const sides = [
  { textAlign: "left", at: (reach, width) => [reach, -highPixels / 2], offset: (reach) => [reach, 0] },
  { textAlign: "right", at: (reach, width) => [-reach - width, -highPixels / 2], offset: (reach) => [-reach, 0] },
  { textAlign: "center", at: (reach, width) => [-width / 2, -reach - highPixels], offset: (reach) => [0, -reach - highPixels / 2] },
  { textAlign: "center", at: (reach, width) => [-width / 2, reach], offset: (reach) => [0, reach + highPixels / 2] },
];

/** The next move's word stands over its pointer. */
const overPointer = [{ textAlign: "center", at: (reach, width) => [-width / 2, -reach - 30 - highPixels / 2], offset: (reach) => [0, -reach - 30] }];

/** A place for each figure, the first ones first; nothing where there is none. All in metres east and north and metres a pixel. */
export function placeFigures(figures, signs, metresPerPixel, reachPixels, signPixels) {
  const taken = [];
  return figures.map(({ east, north, text, next }) => {
    const open = next ? overPointer : sides;
    const width = text.length * letterPixels + 6;
    const box = (side) => {
      const [left, top] = side.at(reachPixels, width);
      const [x, y] = [east / metresPerPixel + left, -north / metresPerPixel + top];
      return [x, y, x + width, y + highPixels];
    };
    const cost = (side) => {
      const own = box(side);
      return count(signs, (sign) => over(own, around(sign, metresPerPixel, signPixels))) * coveringSign + count(taken, (other) => over(own, other)) * coveringFigure;
    };
    const costs = open.map(cost);
    const least = Math.min(...costs);
    if (least >= worst && !next) {
      return null;
    }
    const side = open[costs.indexOf(least)];
    taken.push(box(side));
    return { textAlign: side.textAlign, offset: side.offset(reachPixels), box: taken.at(-1) };
  });
}

/** Whether a name would lie on a figure. */
export function covered(places, east, north, below, text, metresPerPixel) {
  const [x, y] = [east / metresPerPixel, -north / metresPerPixel + below];
  const half = (text.length * letterPixels) / 2;
  return places.some((place) => place !== null && over(place.box, [x - half, y - highPixels / 2, x + half, y + highPixels / 2]));
}

function around([east, north], metresPerPixel, half) {
  const [x, y] = [east / metresPerPixel, -north / metresPerPixel];
  return [x - half, y - half, x + half, y + half];
}

function over(a, b) {
  return a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
}

function count(list, holds) {
  return list.reduce((sum, each) => sum + (holds(each) ? 1 : 0), 0);
}
