// Colours, face and measures of the style sheet, which names them all.

const names = ["ground", "sheet", "rule", "ink", "ink-soft", "accent", "face", "ground-lawn", "ground-bed", "ground-hardscape", "ground-building", "ground-water", "ground-tree", "ground-edge"];

export function readTokens(element) {
  const style = getComputedStyle(element);
  return Object.fromEntries(names.map((name) => [name, style.getPropertyValue(`--${name}`).trim()]));
}
