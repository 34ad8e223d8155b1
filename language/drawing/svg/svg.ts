import type { Drawing, Label, Shape } from '../drawing.ts';
import { type InkLook, INKS } from '../inks.ts';
import { element, printPart, printStart, type SvgElement } from './element.ts';
import { asSigns } from './escaped.ts';
import { type Hatching, hatchId, hatchPattern } from './svg-hatches.ts';
import { type Corner, loopsPath, millimetres, onSheet, rowsPath, sidesPath } from './svg-path.ts';
import { STYLE, WITHOUT_STYLE } from './svg-style.ts';

/** Height of figures over the line they stand on, half of it, as a share of their size: SVG places text by that line. */
const HALF_FIGURE = 0.36;

/**
 * The drawing as an SVG document. Its measure is the millimetre on the ground; at full size it prints to scale. Where several
 * stand in one page, `ids` keeps what is named in one apart from the others.
 */
export function svgOf(drawing: Drawing, ids = 'plan'): string {
  const svg = svgTree(drawing, ids);
  const [title, description, ...rest] = svg.inside.map(printPart);
  return [`${printStart(svg)}>`, title, description, `<style>\n${STYLE}\n</style>`, ...rest, '</svg>', ''].join('\n');
}

/** The drawing as elements, without its style, for who has one. */
export function svgTree({ title, description, sheet, layers }: Drawing, ids = 'plan'): SvgElement {
  const { left, right, bottom, top } = sheet.bounds;
  const hatches = new Map<string, Hatching>();
  for (const shape of layers.flatMap(layer => layer.shapes)) {
    const hatching = hatchingOf(shape);
    if (hatching) hatches.set(hatchId(hatching, ids), hatching);
  }
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'plan',
      role: 'img',
      'aria-labelledby': `${ids}-title ${ids}-description`,
      width: `${millimetres(sheet.width)}mm`,
      height: `${millimetres(sheet.height)}mm`,
      viewBox: `0 0 ${millimetres(right - left)} ${millimetres(top - bottom)}`,
      'font-family': 'sans-serif',
      'stroke-linejoin': 'round'
    },
    element('title', { id: `${ids}-title` }, asSigns(title)),
    element('desc', { id: `${ids}-description` }, asSigns(description)),
    element('defs', {}, ...[...hatches].map(([id, hatching]) => hatchPattern(hatching, { id, paper: sheet.scale }))),
    ...layers.map(({ key, shapes }) =>
      element(
        'g',
        { 'data-key': asSigns(key) },
        ...alike(shapes).map(group => groupOf(group, { left, top }, { scale: sheet.scale, ids }))
      )
    )
  );
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

interface OnPage {
  readonly scale: number;
  readonly ids: string;
}

function groupOf(shapes: readonly Shape[], corner: Corner, page: OnPage): SvgElement {
  return element('g', attributes(shapes[0]!, page), ...shapes.map(shape => nodeOf(shape, corner)));
}

function attributes(shape: Shape, { scale, ids }: OnPage): SvgElement['attributes'] {
  if (shape.kind === 'label') return { 'font-weight': INKS[shape.ink].bold ? 'bold' : 'normal' };
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
  return {
    class: classes.join(' '),
    fill: paint,
    'fill-rule': 'evenodd',
    ...(look.pen > 0 ? { stroke: WITHOUT_STYLE.ink, 'stroke-width': width } : {}),
    ...(look.pen > 0 && dashes.length > 0 ? { 'stroke-dasharray': dashes.join(' ') } : {})
  };
}

function nodeOf(shape: Shape, corner: Corner): SvgElement {
  const key = { 'data-key': asSigns(shape.key) };
  const says = shape.says === undefined ? undefined : element('title', {}, asSigns(shape.says));
  if (shape.kind === 'label') return label(shape, key, says, corner);
  const path =
    shape.kind === 'rows'
      ? rowsPath(shape, corner)
      : shape.kind === 'line'
        ? sidesPath(shape.sides, corner, false)
        : loopsPath(shape.loops, corner);
  return element('path', { ...key, d: path }, says);
}

function label(
  { at, text, size, turn, anchor }: Label,
  key: SvgElement['attributes'],
  says: SvgElement | undefined,
  corner: Corner
): SvgElement {
  const place = onSheet(at, corner);
  const x = place.x / 10;
  const y = place.y / 10;
  const degrees = Math.round((-turn * 180 * 100) / Math.PI) / 100;
  const base = Math.round((y + size * 1000 * HALF_FIGURE) * 10) / 10;
  return element(
    'text',
    {
      ...key,
      x,
      y: base,
      'font-size': millimetres(size),
      'text-anchor': anchor === 'start' ? undefined : anchor,
      transform: degrees === 0 ? undefined : `rotate(${degrees} ${x} ${y})`
    },
    says,
    asSigns(text)
  );
}
