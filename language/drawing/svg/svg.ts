import type { Drawing, Label, Shape } from '../drawing.ts';
import { type InkLook, INKS } from '../inks.ts';
import { escaped } from './escaped.ts';
import { type Hatching, hatchId, hatchPattern } from './svg-hatches.ts';
import { type Corner, loopsPath, millimetres, onSheet, rowsPath, sidesPath } from './svg-path.ts';
import { STYLE, WITHOUT_STYLE } from './svg-style.ts';

/** Height of figures over the line they stand on, half of it, as a share of their size: SVG places text by that line. */
const HALF_FIGURE = 0.36;

/**
 * The drawing as an SVG document. Its measure is the millimetre on the ground; at full size it prints to scale. Where several
 * stand in one page, `ids` keeps what is named in one apart from the others.
 */
export function svgOf({ title, description, sheet, layers }: Drawing, ids = 'plan'): string {
  const { left, right, bottom, top } = sheet.bounds;
  const size = `width="${millimetres(sheet.width)}mm" height="${millimetres(sheet.height)}mm"`;
  const hatches = new Map<string, Hatching>();
  for (const shape of layers.flatMap(layer => layer.shapes)) {
    const hatching = hatchingOf(shape);
    if (hatching) hatches.set(hatchId(hatching, ids), hatching);
  }
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="plan" role="img" aria-labelledby="${ids}-title ${ids}-description" ${size}` +
      ` viewBox="0 0 ${millimetres(right - left)} ${millimetres(top - bottom)}" font-family="sans-serif" stroke-linejoin="round">`,
    `<title id="${ids}-title">${escaped(title)}</title>`,
    `<desc id="${ids}-description">${escaped(description)}</desc>`,
    `<style>\n${STYLE}\n</style>`,
    '<defs>',
    ...[...hatches.values()].map(hatching =>
      hatchPattern(hatching, { id: hatchId(hatching, ids), paper: sheet.scale })
    ),
    '</defs>',
    ...layers.flatMap(({ key, shapes }) => [
      `<g data-key="${escaped(key)}">`,
      ...alike(shapes).flatMap(group => groupOf(group, { left, top }, { scale: sheet.scale, ids })),
      '</g>'
    ]),
    '</svg>',
    ''
  ].join('\n');
}

/** Shapes that follow each other and look alike: what they look like is written once. */
function alike(shapes: readonly Shape[]): Shape[][] {
  const groups: Shape[][] = [];
  for (const shape of shapes) {
    const last = groups.at(-1);
    if (last && lookOf(last[0]!) === lookOf(shape)) last.push(shape);
    else groups.push([shape]);
  }
  return groups;
}

function lookOf(shape: Shape): string {
  const { tint, pen } = tinted(shape);
  return [shape.ink, shape.kind === 'label', shape.kind === 'line', tint, pen].join();
}

function tinted(shape: Shape): Pick<Extract<Shape, { kind: 'rows' }>, 'tint' | 'pen'> {
  return shape.kind === 'rows' || shape.kind === 'outlines' ? shape : {};
}

function hatchingOf(shape: Shape): Hatching | undefined {
  const { fill, hatch }: InkLook = INKS[shape.ink];
  if (hatch === undefined || fill === 'ink') return undefined;
  return { hatch, fill: (fill === 'unit' ? tinted(shape).tint : undefined) ?? fill };
}

function groupOf(shapes: readonly Shape[], corner: Corner, sheet: { scale: number; ids: string }): string[] {
  return [`<g ${attributes(shapes[0]!, sheet)}>`, ...shapes.map(shape => nodeOf(shape, corner)), '</g>'];
}

function attributes(shape: Shape, { scale, ids }: { scale: number; ids: string }): string {
  if (shape.kind === 'label') return INKS[shape.ink].bold ? 'font-weight="bold"' : 'font-weight="normal"';
  const look = INKS[shape.ink];
  const { tint, pen } = tinted(shape);
  const hatching = hatchingOf(shape);
  const fill = shape.kind === 'line' ? 'none' : look.fill;
  const width = Math.round((pen === undefined ? look.pen : Math.min(look.pen, pen * 1000)) * scale * 10) / 10;
  const classes = [
    `plan-${shape.ink}`,
    ...(fill === 'none' || hatching ? [] : [`plan-fill-${fill === 'unit' ? (tint ?? fill) : fill}`]),
    ...(look.pen > 0 ? ['plan-pen'] : [])
  ];
  const paint = hatching ? `url(#${hatchId(hatching, ids)})` : fill === 'none' ? 'none' : WITHOUT_STYLE[fill];
  const dashes = look.dash === undefined ? [] : [look.dash].flat().map(one => Math.round(one * scale * 10) / 10);
  const dash = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  const stroke = look.pen > 0 ? ` stroke="${WITHOUT_STYLE.ink}" stroke-width="${width}"${dash}` : '';
  return `class="${classes.join(' ')}" fill="${paint}" fill-rule="evenodd"${stroke}`;
}

function nodeOf(shape: Shape, corner: Corner): string {
  const key = `data-key="${escaped(shape.key)}"`;
  const says = shape.says === undefined ? '' : `<title>${escaped(shape.says)}</title>`;
  if (shape.kind === 'label') return label(shape, key, says, corner);
  const path =
    shape.kind === 'rows'
      ? rowsPath(shape, corner)
      : shape.kind === 'line'
        ? sidesPath(shape.sides, corner, false)
        : loopsPath(shape.loops, corner);
  return says === '' ? `<path ${key} d="${path}"/>` : `<path ${key} d="${path}">${says}</path>`;
}

function label({ at, text, size, turn, anchor }: Label, key: string, says: string, corner: Corner): string {
  const place = onSheet(at, corner);
  const x = place.x / 10;
  const y = place.y / 10;
  const degrees = Math.round((-turn * 180 * 100) / Math.PI) / 100;
  const turned = degrees === 0 ? '' : ` transform="rotate(${degrees} ${x} ${y})"`;
  const anchored = anchor === 'start' ? '' : ` text-anchor="${anchor}"`;
  const base = Math.round((y + size * 1000 * HALF_FIGURE) * 10) / 10;
  return `<text ${key} x="${x}" y="${base}" font-size="${millimetres(size)}"${anchored}${turned}>${says}${escaped(text)}</text>`;
}
