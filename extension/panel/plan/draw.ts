// A scene as elements of SVG: a path for each look, letters, and what marks single things above them.
import { asSigns } from '../../../language/drawing/svg/escaped.ts';
import { hatchId, type Hatching } from '../../../language/drawing/svg/svg-hatches.ts';
import { drawingToDom } from '../drawing-to-dom.ts';
import { setAll, svg } from './html.ts';
import { LETTER_SIZE, type Letters, placeOfLetters } from './letters.ts';
import { hatchTurn, type Look, patternOf } from './looks.ts';
import { boxOfScaleBar, pathOfScaleBar, type ScaleBar, textOfScaleBar } from './scale-bar.ts';
import type { Scene } from './scene.ts';
import { type Place, type Size, toScreen, type View } from './view.ts';

/** What is marked above the plan, as paths in the pixels of the scene; empty where nothing is. */
export interface Marked {
  readonly selected: string;
  readonly atCursor: string;
  readonly hovered: string;
}

export interface HandleSign {
  readonly at: Place;
  /** It can't be moved. */
  readonly isFixed: boolean;
}

/** What a tool shows, in pixels of the screen. */
export interface ToolSigns {
  readonly lines: readonly (readonly [Place, Place])[];
  readonly crosses: readonly Place[];
  readonly squares: readonly Place[];
  readonly label?: { readonly at: Place; readonly text: string };
}

export class DrawnPlan {
  readonly element: SVGSVGElement;
  private readonly defs = svg('defs', {});
  private readonly shapes = svg('g', {});
  private readonly letters = svg('g', { class: 'letters' });
  private readonly marked = svg('g', { class: 'marked' });
  private readonly moved: SVGGElement;
  private readonly scaleBar = svg('g', {});
  private readonly handles = svg('g', {});
  private readonly tools = svg('g', { class: 'tool' });

  constructor() {
    this.moved = svg('g', {}, this.shapes, this.marked, this.letters);
    this.element = svg(
      'svg',
      { class: 'plan', 'aria-hidden': 'true', focusable: 'false' },
      this.defs,
      this.moved,
      this.scaleBar,
      this.handles,
      this.tools
    );
  }

  draw({ groups, letters, view }: Scene, size: Size): void {
    setAll(this.element, { width: size.width, height: size.height });
    this.defs.replaceChildren(...patterns(groups, view, size));
    this.shapes.replaceChildren(...groups.map(({ look, path }) => svg('path', { ...attributesOf(look), d: path })));
    this.letters.replaceChildren(...letters.map(lettersElement));
  }

  /** It stays where it is, whatever is moved. */
  drawScaleBar(bar: ScaleBar, size: Size): void {
    const [left, top, right, bottom] = boxOfScaleBar(bar, size);
    this.scaleBar.replaceChildren(
      svg('path', { class: 'plan-fill-paper', d: `M${left} ${top}H${right.toFixed(1)}V${bottom}H${left}z` }),
      svg('path', { class: 'plan-pen', fill: 'none', 'stroke-width': 2, d: pathOfScaleBar(bar, size) }),
      svg('text', { ...textOfScaleBar(size), 'font-size': LETTER_SIZE }, bar.text)
    );
  }

  /** What was drawn is moved by so many pixels. */
  shift({ x, y }: Place): void {
    setAll(this.moved, { transform: x === 0 && y === 0 ? undefined : `translate(${x.toFixed(2)} ${y.toFixed(2)})` });
  }

  /** Marks differ by their lines: selected ones are double, those at the cursor broken, what is pointed at single. */
  mark({ selected, atCursor, hovered }: Marked): void {
    const lines = (path: string, ...classes: readonly string[]): SVGPathElement[] =>
      path === '' ? [] : classes.map(name => svg('path', { class: name, d: path }));
    this.marked.replaceChildren(
      ...lines(atCursor, 'under-line', 'at-cursor'),
      ...lines(hovered, 'under-line', 'hovered'),
      ...lines(selected, 'under-double', 'double', 'in-double')
    );
  }

  handle(handles: readonly HandleSign[]): void {
    this.handles.replaceChildren(
      ...handles.flatMap(({ at, isFixed }) => square(at, isFixed ? 'handle fixed' : 'handle'))
    );
  }

  tool({ lines, crosses, squares, label }: ToolSigns): void {
    const both = (path: string): SVGPathElement[] =>
      ['under-line', 'tool-line'].map(name => svg('path', { class: name, d: path }));
    this.tools.replaceChildren(
      ...lines.flatMap(([from, to]) => both(`M${words(from)}L${words(to)}`)),
      ...crosses.flatMap(at => both(`M${words({ x: at.x - 9, y: at.y })}h18M${words({ x: at.x, y: at.y - 9 })}v18`)),
      ...squares.flatMap(at => square(at, 'handle')),
      ...(label === undefined ? [] : [toolLabel(label)])
    );
  }

  /** Elements that the plan is made of at this moment. */
  get nodes(): number {
    return this.element.getElementsByTagName('*').length + 1;
  }
}

const words = ({ x, y }: Place): string => `${x.toFixed(1)} ${y.toFixed(1)}`;

function square(at: Place, name: string): SVGPathElement[] {
  const path = `M${words({ x: at.x - 5, y: at.y - 5 })}h10v10h-10z`;
  const crossed = name.endsWith('fixed') ? `${path}m0 10l10 -10` : path;
  return [svg('path', { class: name, d: crossed })];
}

function toolLabel({ at, text }: NonNullable<ToolSigns['label']>): SVGTextElement {
  return svg('text', { class: 'tool-text', x: Math.round(at.x) + 12, y: Math.round(at.y) - 10 }, text);
}

function attributesOf({
  classes,
  fill,
  pen,
  dashes,
  stale
}: Look): Readonly<Record<string, string | number | undefined>> {
  return {
    class: stale ? `${classes} stale` : classes,
    fill,
    'fill-rule': 'evenodd',
    'stroke-width': pen === 0 ? undefined : pen.toFixed(2),
    'stroke-dasharray': dashes
  };
}

/** Hatches lie still on the ground while the plan is drawn anew. */
function patterns(groups: Scene['groups'], view: View, size: Size): Element[] {
  const origin = toScreen(view, size, { x: 0, y: 0 });
  const used = new Map<string, Hatching>();
  for (const { look } of groups) if (look.hatching) used.set(hatchId(look.hatching, ''), look.hatching);
  return [...used.values()].flatMap(hatching => {
    const built = drawingToDom(patternOf(hatching), document);
    if (built === undefined) return [];
    const turn = hatchTurn(hatching.hatch);
    setAll(built, { patternTransform: `translate(${origin.x.toFixed(1)} ${origin.y.toFixed(1)}) rotate(${turn})` });
    return [built];
  });
}

function lettersElement(letters: Letters): SVGTextElement {
  return svg(
    'text',
    {
      ...placeOfLetters(letters),
      'font-size': letters.size,
      'font-weight': letters.bold ? 'bold' : undefined,
      'text-anchor': letters.anchor === 'start' ? undefined : letters.anchor
    },
    asSigns(letters.text)
  );
}
