// What is seen, drawn once a frame at most: anew where it has changed, else moved.
import { DrawnPlan, type HandleSign } from './draw.ts';
import { outlineOf } from './outlines.ts';
import type { PlanWords } from './messages.ts';
import type { Prepared } from './prepared.ts';
import { scaleBarOf } from './scale-bar.ts';
import { type Scene, sceneOf } from './scene.ts';
import { type Tool, toolSigns } from './tools.ts';
import { onScreen, shiftOf, type Size, type View } from './view.ts';
import type { Content } from '../../../server/plan-protocol.ts';

/** What there is to show at this moment. */
export interface Showing {
  readonly prepared: Prepared;
  readonly view: View;
  readonly size: Size;
  readonly hidden: ReadonlySet<Content>;
  readonly selected: string;
  readonly hovered: string | undefined;
  readonly atCursor: readonly string[];
  readonly tool: Tool;
  readonly handles: readonly HandleSign[];
}

export interface FrameEvents {
  /** Asked once what is seen is drawn: what lies under the pointer hangs on it. Undefined while there is nothing to show. */
  readonly showing: () => Pick<Showing, 'prepared' | 'view' | 'size' | 'hidden'> | undefined;
  readonly marked: () => Omit<Showing, 'prepared' | 'view' | 'size' | 'hidden'>;
  readonly drawn: () => void;
}

export class Frames {
  scene: Scene | undefined;
  private readonly plan = new DrawnPlan();
  private readonly words: PlanWords;
  private readonly events: FrameEvents;
  private drawnOf: Pick<Showing, 'prepared' | 'hidden' | 'size'> | undefined;
  private isOld = false;
  private frame = 0;

  constructor(words: PlanWords, events: FrameEvents) {
    this.words = words;
    this.events = events;
  }

  get element(): SVGSVGElement {
    return this.plan.element;
  }

  /** Elements that the plan is made of at this moment. */
  get nodes(): number {
    return this.plan.nodes;
  }

  /** The plan is drawn anew with the next frame. */
  redraw(): void {
    this.isOld = true;
    this.refresh();
  }

  /** Marks, tools and what the page tells are made anew with the next frame. */
  refresh(): void {
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      this.draw();
    });
  }

  private draw(): void {
    const showing = this.events.showing();
    if (showing === undefined || showing.size.width === 0 || showing.size.height === 0) return;
    const { prepared, view, size, hidden } = showing;
    if (this.isOld && !this.isStillDrawn(showing)) {
      const { asBefore, unitsTooSmall } = this.words;
      this.scene = sceneOf({ prepared, view, size, hidden, asBefore, unitsTooSmall });
      this.plan.draw(this.scene, size);
      this.plan.drawScaleBar(scaleBarOf(prepared.plan.system, view.scale), size);
      this.drawnOf = { prepared, hidden, size };
    }
    this.isOld = false;
    const scene = this.scene!;
    const marked = this.events.marked();
    this.plan.shift(shiftOf(scene.view, view)!);
    this.mark({ ...showing, ...marked }, scene);
    this.plan.handle(marked.handles);
    this.plan.tool(toolSigns(marked.tool, view, size, prepared.plan.system));
    this.events.drawn();
  }

  /** It was moved alone, and no farther than it was drawn. */
  private isStillDrawn({
    prepared,
    view,
    size,
    hidden
  }: Pick<Showing, 'prepared' | 'view' | 'size' | 'hidden'>): boolean {
    const { scene, drawnOf } = this;
    if (scene === undefined || drawnOf?.prepared !== prepared || drawnOf.hidden !== hidden) return false;
    if (drawnOf.size !== size) return false;
    const shift = shiftOf(scene.view, view);
    return shift !== undefined && Math.abs(shift.x) <= scene.margin.x && Math.abs(shift.y) <= scene.margin.y;
  }

  private mark({ prepared, size, selected, hovered, atCursor }: Showing, scene: Scene): void {
    const at = onScreen(scene.view, size);
    const outline = (key: string | undefined): string => (key === undefined ? '' : outlineOf(key, prepared, at));
    const innermost = atCursor.find(key => prepared.things.has(key) || prepared.shapesOf.has(key));
    this.plan.mark({
      selected: outline(selected === '' ? undefined : selected),
      atCursor: outline(innermost),
      hovered: hovered === selected ? '' : outline(hovered)
    });
  }
}
