// What the signs on the plan mean: only those that there are, and that are shown.
import type { Content, LiveLegendLine } from '../../../server/plan-protocol.ts';
import { drawingToDom } from '../drawing-to-dom.ts';
import { html, svg } from './html.ts';
import { type Drawn, type Look, lookOf, patternOf } from './looks.ts';
import type { PlanWords } from './messages.ts';
import type { Scene } from './scene.ts';
import { lookOfSign, signPath } from './signs.ts';

/** Pixels. */
const WIDTH = 40;
const HEIGHT = 18;

export class LegendView {
  readonly element: HTMLDetailsElement;
  private readonly summary = html('summary', {});
  private readonly list = html('ul', { class: 'legend' });
  private shown: unknown;

  constructor() {
    this.element = html('details', { class: 'legend-box' }, this.summary, this.list);
    // Where there is no room beside the drawing, it would take that from the drawing.
    this.element.open = matchMedia('(min-width: 760px)').matches;
  }

  show(
    lines: readonly LiveLegendLine[],
    hidden: ReadonlySet<Content>,
    scene: Scene | undefined,
    words: PlanWords
  ): void {
    const fit = lines.filter(({ content }) => content === undefined || !hidden.has(content));
    const isCoarse = scene !== undefined && scene.detail !== 'units';
    const isLess = scene?.leftOut === true;
    const now = JSON.stringify([fit, isCoarse, isLess]);
    if (now === this.shown) return;
    this.shown = now;
    this.summary.textContent = words.legend;
    this.list.replaceChildren(
      ...fit.map(lineElement),
      ...(isCoarse ? [item(inkSign({ ink: 'ground', hatch: 'dots' }), words.unitsTooSmall)] : []),
      ...(isLess ? [item(undefined, words.leftOut)] : [])
    );
  }
}

function lineElement({ sign, text, strong }: LiveLegendLine): HTMLElement {
  if ('ink' in sign) return item(inkSign(sign), text, strong);
  if ('line' in sign) return item(lineSign(sign.line), text, strong);
  if ('mark' in sign) {
    const turned = sign.mark === 'start' ? { x: 8, y: HEIGHT / 2 } : { x: WIDTH / 2, y: HEIGHT / 2 };
    return item(picture(lookOfSign(sign.mark, false), signPath(sign.mark, turned)), text, strong);
  }
  return item(undefined, text, strong);
}

function item(sign: Element | undefined, text: string, strong?: true): HTMLElement {
  const words = strong ? html('strong', {}, text) : html('span', {}, text);
  return html('li', sign === undefined ? { class: 'without-sign' } : {}, ...(sign === undefined ? [] : [sign]), words);
}

function inkSign(drawn: Drawn): Element {
  return picture(lookOf(drawn), `M2 2h${WIDTH - 4}v${HEIGHT - 4}h${4 - WIDTH}z`);
}

function lineSign(ink: string): Element {
  return picture(lookOf({ ink, open: true }), `M1 ${HEIGHT / 2}h${WIDTH - 2}`);
}

/** Its hatch is named apart from those of the plan, which may go. */
function picture(look: Look, path: string): Element {
  const { hatching, classes, fill, pen, dashes } = look;
  const id = hatching === undefined ? '' : `legend-${hatching.hatch}-${hatching.fill}`;
  const pattern = hatching === undefined ? undefined : drawingToDom(patternOf(hatching), document);
  pattern?.setAttribute('id', id);
  return svg(
    'svg',
    { class: 'plan', width: WIDTH, height: HEIGHT, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, 'aria-hidden': 'true' },
    ...(pattern === undefined ? [] : [svg('defs', {}, pattern)]),
    svg('path', {
      class: classes,
      fill: hatching === undefined ? fill : `url(#${id})`,
      'stroke-width': pen === 0 ? undefined : Math.min(pen, 8).toFixed(2),
      'stroke-dasharray': dashes,
      d: path
    })
  );
}
