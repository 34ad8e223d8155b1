// How things look on the screen: with the pens, fillings and hatches of printed plans, at the same size.
import { INKS, type Hatch, type Ink, type InkLook } from '../../../language/drawing/inks.ts';
import { type Hatching, hatchId, hatchPattern } from '../../../language/drawing/svg/svg-hatches.ts';
import { TINTS, type Tint } from '../../../language/drawing/tints.ts';
import type { DrawnElement } from '../../../server/protocol.ts';

/** CSS pixels for one mm on paper: a CSS inch has 96 (CSS Values and Units, absolute lengths). */
const PIXELS_PER_MM = 96 / 25.4;

/** Thinner lines vanish on a screen of usual fineness. */
const THINNEST = 0.6;

/** Thicker lines outshout what they run round; half of it lies outside. */
const THICKEST = 5;

export interface Look {
  /** Shapes of one name are one path. */
  readonly name: string;
  readonly classes: string;
  /** `none`, a hatch by its address, or nothing where the classes tell the colour. */
  readonly fill?: string;
  readonly pen: number;
  readonly dashes?: string;
  readonly stale: boolean;
  readonly hatching?: Hatching;
}

/** What is written in front of the names of hatches, so that those of a section in the same page are others. */
const IDS = 'live';

function isTint(tint: string | undefined): tint is Tint {
  return tint !== undefined && (TINTS as readonly string[]).includes(tint);
}

/** An ink that this page doesn't know is a plain line. */
function knownInk(ink: string): Ink {
  return Object.hasOwn(INKS, ink) ? (ink as Ink) : 'outline';
}

function inkLook(ink: string): InkLook {
  return INKS[knownInk(ink)];
}

export interface Drawn {
  readonly ink: string;
  readonly tint?: string | undefined;
  readonly stale?: true | undefined;
  /** A line that encloses nothing. */
  readonly open?: boolean;
  /** Of ground whose units are too small to be drawn: it tells of them. */
  readonly hatch?: Hatch;
  /** So small that its line in full would outshout its filling. */
  readonly fine?: boolean;
}

export function lookOf({ ink, tint, stale, open, hatch, fine }: Drawn): Look {
  const look = inkLook(ink);
  const known = isTint(tint) ? tint : undefined;
  const isUnit = hatch !== undefined || look.fill === 'unit';
  const fill = open ? 'none' : isUnit ? (known ?? 'unit') : look.fill;
  const wanted = hatch ?? (open ? undefined : look.hatch);
  const hatching: Hatching | undefined = wanted === undefined || fill === 'ink' ? undefined : { hatch: wanted, fill };
  const pen = look.pen === 0 ? 0 : Math.min(THICKEST, Math.max(THINNEST, look.pen * PIXELS_PER_MM));
  const classes = [
    ...(fill === 'none' || hatching ? [] : [`plan-fill-${fill}`]),
    ...(pen > 0 ? ['plan-pen'] : []),
    ...(fine ? ['plan-fine'] : [])
  ];
  const painted = hatching ? `url(#${hatchId(hatching, IDS)})` : fill === 'none' ? 'none' : undefined;
  const dashes = look.dash === undefined || pen === 0 ? [] : [look.dash].flat();
  return {
    name: [knownInk(ink), known ?? '', open ? 'open' : '', hatch ?? (fine ? 'fine' : ''), stale ? 'stale' : ''].join(
      ' '
    ),
    classes: classes.join(' '),
    ...(painted === undefined ? {} : { fill: painted }),
    pen,
    ...(dashes.length === 0 ? {} : { dashes: dashes.map(dash => (dash * PIXELS_PER_MM).toFixed(1)).join(' ') }),
    stale: stale === true,
    ...(hatching === undefined ? {} : { hatching })
  };
}

export function isBold(ink: string): boolean {
  return inkLook(ink).bold === true;
}

/** Over what is from before an error. */
export const STALE_HATCH: Look = {
  name: 'before an error',
  classes: '',
  fill: `url(#${hatchId({ hatch: 'dashes', fill: 'none' }, IDS)})`,
  pen: 0,
  stale: false,
  hatching: { hatch: 'dashes', fill: 'none' }
};

export function patternOf(hatching: Hatching): DrawnElement {
  return hatchPattern(hatching, { id: hatchId(hatching, IDS), paper: PIXELS_PER_MM });
}

/** How a hatch is turned: lines one way or the other. */
export function hatchTurn(hatch: Hatch): number {
  return hatch === 'lines' ? 45 : hatch === 'falling' ? -45 : 0;
}
