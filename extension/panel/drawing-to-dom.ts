import type { DrawnElement } from '../../server/protocol.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** What a drawing is made of: anything else is not built. */
const ELEMENTS: ReadonlySet<string> = new Set([
  ...['svg', 'title', 'desc', 'defs', 'pattern', 'g'],
  ...['path', 'rect', 'circle', 'text']
]);

const ATTRIBUTES: ReadonlySet<string> = new Set([
  ...['class', 'id', 'role', 'aria-labelledby', 'data-key'],
  ...['width', 'height', 'viewBox', 'x', 'y', 'cx', 'cy', 'r', 'd', 'transform'],
  ...['patternUnits', 'patternTransform'],
  ...['fill', 'fill-rule', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linejoin'],
  ...['font-family', 'font-size', 'font-weight', 'text-anchor']
]);

/** Builds a drawing as the printer of drawings prints it; words come in as words, whatever stands in them. */
export function drawingToDom(drawing: DrawnElement, page: Pick<Document, 'createElementNS'>): Element | undefined {
  if (!ELEMENTS.has(drawing.name)) return undefined;
  const built = page.createElementNS(SVG, drawing.name);
  for (const [name, value] of Object.entries(drawing.attributes))
    if (ATTRIBUTES.has(name)) built.setAttribute(name, String(value));
  for (const part of drawing.inside) {
    const inside = typeof part === 'string' ? part : drawingToDom(part, page);
    if (inside !== undefined) built.append(inside);
  }
  return built;
}
