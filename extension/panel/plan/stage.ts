// The drawing with the hands on it: what pointer, wheel and keys do, and what is then drawn, once a frame at most.
import type { Content, LiveThing } from '../../../server/plan-protocol.ts';
import type { HandleSign } from './draw.ts';
import { directionOf } from './edge-direction.ts';
import { type FrameEvents, Frames } from './frames.ts';
import { html, setAll } from './html.ts';
import { commandOf, type Command, type Way } from './keys.ts';
import { caught, stepOf } from './measure.ts';
import type { PlanState, PlanWords } from './messages.ts';
import { pick } from './pick.ts';
import type { Prepared } from './prepared.ts';
import type { Scene } from './scene.ts';
import { NO_TOOL, type Tool, toolWords, withPlace } from './tools.ts';
import {
  apart,
  fitted,
  panned,
  type Place,
  shiftOf,
  type Size,
  toGround,
  toScreen,
  turnedTo,
  turnOf,
  type View,
  zoomedAbout
} from './view.ts';
import { fillIn } from './words.ts';

export interface StageEvents {
  readonly select: (thing: string) => void;
  readonly open: (thing: string) => void;
  readonly drag: (thing: string, to: Place) => void;
  readonly section: (from: Place, to: Place) => void;
  /** Something that the rest of the page shows, or that is kept, is another. */
  readonly changed: () => void;
  /** To be read, and to be read out. */
  readonly say: (words: string) => void;
}

/** The pointer moves so far, pixels, before a press is no click. */
const STILL = 4;
/** A handle is taken hold of by who points so near to it, pixels. */
const NEAR_HANDLE = 9;
/** Pixels that a key moves the plan, and a cross-hair. */
const KEY_PAN = 60;
const KEY_CROSS = 8;
const KEY_ZOOM = 1.3;
/** How much a wheel zooms for one pixel of its turn; pinched, fingers turn it less. */
const WHEEL = 0.0016;
const PINCH = 0.01;
/** Pixels of a line and of a page, where a wheel counts in those. */
const WHEEL_LINE = 16;
const WHEEL_PAGE = 400;

interface Press {
  readonly id: number;
  readonly at: Place;
  /** What lay under it then: the plan may be zoomed meanwhile. */
  readonly ground: Place;
  last: Place;
  isMoved: boolean;
}

export class Stage {
  readonly element: HTMLElement;
  prepared: Prepared | undefined;
  selected = '';
  hovered: string | undefined;
  hidden: ReadonlySet<Content> = new Set();
  tool: Tool = NO_TOOL;
  turn = 0;
  /** All of it is to be seen, whatever comes. */
  isFitted = true;
  private readonly frames: Frames;
  private readonly words: PlanWords;
  private readonly events: StageEvents;
  private view: View = { x: 0, y: 0, scale: 0.1, turn: 0 };
  private size: Size = { width: 0, height: 0 };
  private atCursor: readonly string[] = [];
  private press: Press | undefined;
  private pointer: Place | undefined;

  constructor(words: PlanWords, events: StageEvents) {
    this.words = words;
    this.events = events;
    this.element = html('div', { class: 'stage', role: 'application', tabindex: '0', 'aria-describedby': 'keys' });
    this.frames = new Frames(words, {
      showing: () => {
        const { prepared, view, size, hidden } = this;
        return prepared && { prepared, view, size, hidden };
      },
      marked: () => this.marked(),
      drawn: () => this.drawn()
    });
    this.element.append(this.frames.element);
    this.listen();
    new ResizeObserver(() => this.resized()).observe(this.element);
  }

  // ---- what is shown ----

  show(prepared: Prepared): void {
    this.prepared = prepared;
    if (this.tool.kind === 'move' && (this.tool.isAsked || !prepared.things.get(this.tool.thing)?.handle)) {
      this.tool = NO_TOOL;
      this.events.say('');
    }
    setAll(this.element, { 'aria-label': fillIn(this.words.drawing, prepared.plan.title) });
    if (this.isFitted) this.refit();
    this.redraw();
  }

  /** As it was kept. */
  restore({ view, turn, hidden, selected }: PlanState): void {
    this.turn = turn;
    this.hidden = new Set(hidden);
    this.selected = selected;
    this.isFitted = view === undefined;
    if (view !== undefined) this.view = { x: view.x, y: view.y, scale: view.pixelsPerMetre / 1000, turn };
  }

  get kept(): Pick<PlanState, 'view' | 'turn' | 'hidden' | 'selected'> {
    const { x, y, scale } = this.view;
    return {
      ...(this.isFitted ? {} : { view: { x, y, pixelsPerMetre: scale * 1000 } }),
      turn: this.turn,
      hidden: [...this.hidden],
      selected: this.selected
    };
  }

  hide(content: Content, isShown: boolean): void {
    const hidden = new Set(this.hidden);
    if (isShown) hidden.delete(content);
    else hidden.add(content);
    this.hidden = hidden;
    this.redraw();
  }

  atTheCursor(things: readonly string[]): void {
    this.atCursor = things;
    this.refresh();
  }

  /** What was dragged stays where it was. */
  giveUpMoving(): void {
    if (this.tool.kind === 'move') this.tool = NO_TOOL;
    this.refresh();
  }

  // ---- the view ----

  fit(): void {
    this.isFitted = true;
    this.refit();
    this.redraw();
  }

  zoom(closer: boolean): void {
    const middle = { x: this.size.width / 2, y: this.size.height / 2 };
    this.look(zoomedAbout(this.view, this.size, middle, closer ? KEY_ZOOM : 1 / KEY_ZOOM));
  }

  /** To the selected edge, or back. */
  turnAbout(): void {
    if (this.turn !== 0) this.turnBy(0, this.words.turnedBack);
    else {
      const edge = this.thing(this.selected);
      const direction = edge && this.prepared && directionOf(edge.key, this.prepared);
      if (edge === undefined || direction === undefined) this.events.say(this.words.chooseEdge);
      else this.turnBy(turnOf(direction), fillIn(this.words.turned, edge.name));
    }
  }

  private turnBy(turn: number, words: string): void {
    this.turn = turn;
    this.view = turnedTo(this.view, turn);
    if (this.isFitted) this.refit();
    this.events.say(words);
    this.redraw();
  }

  private refit(): void {
    if (this.prepared !== undefined && this.size.width > 0)
      this.view = fitted(this.prepared.extent, this.size, this.turn, this.prepared.beside);
  }

  private look(view: View): void {
    this.view = view;
    this.isFitted = false;
    this.redraw();
  }

  private resized(): void {
    const { clientWidth: width, clientHeight: height } = this.element;
    if (width === this.size.width && height === this.size.height) return;
    this.size = { width, height };
    if (this.isFitted) this.refit();
    this.redraw();
  }

  // ---- drawing ----

  private redraw(): void {
    this.frames.redraw();
  }

  private refresh(): void {
    this.frames.refresh();
  }

  get scene(): Scene | undefined {
    return this.frames.scene;
  }

  /** Where the plan was drawn anew, another thing may lie under the pointer. */
  private marked(): ReturnType<FrameEvents['marked']> {
    if (this.pointer !== undefined && this.press === undefined) this.hover(this.pointer);
    const { selected, hovered, atCursor, tool } = this;
    return { selected, hovered, atCursor, tool, handles: this.handles() };
  }

  private drawn(): void {
    const { counted, detail } = this.frames.scene!;
    // Read by tests and by who looks for what is slow.
    setAll(this.element, {
      'data-nodes': this.frames.nodes,
      'data-work': counted.work,
      'data-units': counted.units,
      'data-detail': detail
    });
    this.events.changed();
  }

  /** Of what is selected and what is pointed at. */
  private handles(): HandleSign[] {
    if (this.tool.kind !== 'none') return [];
    return this.holdable().map(({ handle }) => ({
      at: toScreen(this.view, this.size, handle),
      isFixed: handle.why !== undefined
    }));
  }

  private holdable(): (LiveThing & Required<Pick<LiveThing, 'handle'>>)[] {
    const keys = new Set([this.selected, this.hovered ?? '']);
    return [...keys].flatMap(key => {
      const thing = this.thing(key);
      return thing?.handle === undefined ? [] : [{ ...thing, handle: thing.handle }];
    });
  }

  thing(key: string): LiveThing | undefined {
    return this.prepared?.things.get(key);
  }

  // ---- choosing ----

  /** Selects it; where it isn't seen, the plan moves until it is. */
  selectThing(key: string, isMoved: boolean): void {
    if (this.selected !== key) {
      this.selected = key;
      this.events.select(key);
    }
    const bounds = this.thing(key)?.bounds;
    if (isMoved && bounds !== undefined) {
      const middle = { x: (bounds[0] + bounds[2]) / 2, y: (bounds[1] + bounds[3]) / 2 };
      const { x, y } = toScreen(this.view, this.size, middle);
      const rim = 24;
      if (x < rim || y < rim || x > this.size.width - rim || y > this.size.height - rim)
        this.look({ ...this.view, ...middle });
    }
    this.refresh();
  }

  private pickAt(at: Place): string | undefined {
    const { prepared, view, size, hidden, scene } = this;
    if (prepared === undefined || scene === undefined) return undefined;
    const shift = shiftOf(scene.view, view) ?? { x: 0, y: 0 };
    return pick(at, { prepared, view, size, hidden, detail: scene.detail, letters: scene.letters, shift });
  }

  private hover(at: Place): void {
    this.hovered = this.tool.kind === 'none' ? this.pickAt(at) : undefined;
    const handle = this.handleAt(at);
    setAll(this.element, {
      'data-over': handle ? 'handle' : this.tool.kind !== 'none' ? 'tool' : this.hovered ? 'thing' : ''
    });
  }

  private handleAt(at: Place): ReturnType<Stage['holdable']>[number] | undefined {
    return this.tool.kind === 'none'
      ? this.holdable().find(({ handle }) => apart(at, toScreen(this.view, this.size, handle)) <= NEAR_HANDLE)
      : undefined;
  }

  /** From one to the next in the order of the table, of what is drawn. */
  private walk(by: 1 | -1): void {
    const { prepared } = this;
    if (prepared === undefined) return;
    const drawn = prepared.plan.things.filter(({ key }) =>
      prepared.shapesOf.get(key)?.some(({ content }) => !this.hidden.has(content))
    );
    const at = drawn.findIndex(({ key }) => key === this.selected);
    const from = at < 0 && by < 0 ? 0 : at;
    const next = drawn[(from + by + drawn.length) % Math.max(1, drawn.length)];
    this.pointer = undefined;
    this.hovered = undefined;
    if (next !== undefined) this.selectThing(next.key, true);
  }

  // ---- tools ----

  useTool(kind: 'measure' | 'section' | 'none'): void {
    this.tool = kind === 'none' ? NO_TOOL : { kind, cross: { x: this.view.x, y: this.view.y } };
    this.sayTool(kind === 'none' ? this.words.ended : undefined);
    this.refresh();
  }

  private sayTool(otherwise?: string): void {
    const system = this.prepared?.plan.system ?? 'metric';
    this.events.say(otherwise ?? toolWords(this.tool, this.words, system));
  }

  private catch(at: Place): Place {
    const { prepared, view, size, hidden } = this;
    return prepared === undefined ? toGround(view, size, at) : caught(at, { prepared, view, size, hidden });
  }

  private place(at: Place): void {
    if (this.tool.kind !== 'measure' && this.tool.kind !== 'section') return;
    this.tool = withPlace(this.tool, this.catch(at));
    this.sayTool();
    const { kind, from, to } = this.tool;
    if (kind === 'section' && from !== undefined && to !== undefined) {
      this.tool = NO_TOOL;
      this.events.section(from, to);
    }
    this.refresh();
  }

  private takeHold(byKeys: boolean, thing: LiveThing | undefined): void {
    if (thing === undefined) return;
    const { handle, name, key } = thing;
    if (handle === undefined || handle.why !== undefined) {
      this.events.say(handle?.why ?? fillIn(this.words.noHandle, name));
      return;
    }
    const from = { x: handle.x, y: handle.y };
    this.tool = { kind: 'move', thing: key, name, from, to: from, byKeys, isAsked: false };
    this.sayTool();
    this.refresh();
  }

  private moveTo(to: Place): void {
    if (this.tool.kind !== 'move' || this.tool.isAsked) return;
    this.tool = { ...this.tool, to };
    this.sayTool();
    this.refresh();
  }

  private letGo(): void {
    if (this.tool.kind !== 'move' || this.tool.isAsked) return;
    const { thing, from, to, name } = this.tool;
    if (from.x === to.x && from.y === to.y) {
      this.tool = NO_TOOL;
      this.sayTool(fillIn(this.words.moveGivenUp, name));
    } else {
      this.tool = { ...this.tool, isAsked: true };
      this.sayTool();
      this.events.drag(thing, { x: Math.round(to.x * 10) / 10, y: Math.round(to.y * 10) / 10 });
    }
    this.refresh();
  }

  /** The pointer is gone: what it held stays where it was. */
  private loosed(): void {
    if (this.tool.kind === 'move' && !this.tool.byKeys && !this.tool.isAsked) this.giveUpMoving();
    this.press = undefined;
    this.refresh();
  }

  private escape(): void {
    const { tool } = this;
    // It is being written by now; one undo takes it back.
    if (tool.kind === 'move' && tool.isAsked) return;
    if (tool.kind === 'move') this.sayTool(fillIn(this.words.moveGivenUp, tool.name));
    else if (tool.kind !== 'none') this.sayTool(this.words.ended);
    else if (this.selected !== '') this.selectThing('', false);
    this.tool = NO_TOOL;
    this.press = undefined;
    this.refresh();
  }

  // ---- hands ----

  private listen(): void {
    const { element } = this;
    element.addEventListener('pointerdown', event => this.pressed(event));
    element.addEventListener('pointermove', event => this.pointed(event));
    element.addEventListener('pointerup', event => this.released(event));
    element.addEventListener('pointercancel', () => this.loosed());
    element.addEventListener('pointerleave', () => {
      this.pointer = undefined;
      this.hovered = undefined;
      this.refresh();
    });
    element.addEventListener('wheel', event => this.wheeled(event), { passive: false });
    element.addEventListener('keydown', event => {
      const command = commandOf(event);
      if (command === undefined) return;
      // Else the editor would take it for one of its own.
      event.preventDefault();
      event.stopPropagation();
      this.obey(command, event);
    });
  }

  private placeOf(event: MouseEvent): Place {
    const { left, top } = this.element.getBoundingClientRect();
    return { x: event.clientX - left - this.element.clientLeft, y: event.clientY - top - this.element.clientTop };
  }

  private pressed(event: PointerEvent): void {
    if (event.button > 1 || this.press !== undefined) return;
    const at = this.placeOf(event);
    this.hover(at);
    this.press = { id: event.pointerId, at, ground: toGround(this.view, this.size, at), last: at, isMoved: false };
    this.element.setPointerCapture(event.pointerId);
    const held = event.button === 0 ? this.handleAt(at) : undefined;
    if (held !== undefined) this.takeHold(false, held);
  }

  private pointed(event: PointerEvent): void {
    const at = this.placeOf(event);
    this.pointer = at;
    const { press, tool } = this;
    if (press?.id === event.pointerId) {
      press.isMoved ||= apart(press.at, at) > STILL;
      if (tool.kind === 'move' && !tool.byKeys) {
        if (press.isMoved) this.moveTo(this.heldAt(at));
      } else if (press.isMoved) {
        this.look(panned(this.view, at.x - press.last.x, at.y - press.last.y));
        press.last = at;
      }
    } else if ((tool.kind === 'measure' || tool.kind === 'section') && tool.to === undefined) {
      this.tool = { ...tool, cross: this.catch(at) };
    }
    this.refresh();
  }

  /** Where the handle comes to lie: it is moved as far as the pointer was. */
  private heldAt(at: Place): Place {
    const { press, tool, view, size } = this;
    if (press === undefined || tool.kind !== 'move') return { x: 0, y: 0 };
    const now = toGround(view, size, at);
    return { x: tool.from.x + now.x - press.ground.x, y: tool.from.y + now.y - press.ground.y };
  }

  private released(event: PointerEvent): void {
    const { press, tool } = this;
    if (press?.id !== event.pointerId) return;
    this.press = undefined;
    const at = this.placeOf(event);
    if (tool.kind === 'move' && !tool.byKeys && !press.isMoved && !tool.isAsked) {
      // Pressed and let go in one place: it was pointed at, not dragged.
      this.tool = NO_TOOL;
      this.events.say('');
      this.clicked(at);
    } else if (tool.kind === 'move') {
      if (!tool.byKeys) this.letGo();
    } else if (!press.isMoved && event.button === 0) {
      if (tool.kind === 'none') this.clicked(at);
      else this.place(at);
    }
    this.refresh();
  }

  private clicked(at: Place): void {
    const key = this.pickAt(at);
    const held = this.handleAt(at);
    if (held?.handle.why !== undefined) this.events.say(held.handle.why);
    this.selectThing(key ?? '', false);
    if (key !== undefined) this.events.open(key);
  }

  private wheeled(event: WheelEvent): void {
    event.preventDefault();
    const unit = event.deltaMode === 0 ? 1 : event.deltaMode === 1 ? WHEEL_LINE : WHEEL_PAGE;
    const turn = event.deltaY * unit * (event.ctrlKey ? PINCH : WHEEL);
    this.look(zoomedAbout(this.view, this.size, this.placeOf(event), Math.exp(-Math.max(-1, Math.min(1, turn)))));
  }

  private obey(command: Command, keys: { readonly shiftKey: boolean; readonly altKey: boolean }): void {
    switch (command.do) {
      case 'go':
        return this.go(command.way, keys);
      case 'zoom':
        return this.zoom(command.closer);
      case 'walk':
        return this.walk(command.by);
      case 'fit':
        return this.fit();
      case 'measure':
        return this.useTool(this.tool.kind === 'measure' ? 'none' : 'measure');
      case 'hold':
        return this.takeHold(true, this.thing(this.selected));
      case 'escape':
        return this.escape();
      case 'enter':
        return this.enter();
    }
  }

  private go([right, down]: Way, keys: { readonly shiftKey: boolean; readonly altKey: boolean }): void {
    const { tool, view, size } = this;
    const system = this.prepared?.plan.system ?? 'metric';
    if (tool.kind === 'none') return this.look(panned(view, -right * KEY_PAN, -down * KEY_PAN));
    if (tool.kind === 'move') {
      const pixels = stepOf(system, keys) * view.scale;
      const on = toScreen(view, size, tool.to);
      return this.moveTo(toGround(view, size, { x: on.x + right * pixels, y: on.y + down * pixels }));
    }
    const pixels = keys.altKey ? 1 : keys.shiftKey ? 10 * KEY_CROSS : KEY_CROSS;
    const on = toScreen(view, size, tool.cross);
    const cross = toGround(view, size, { x: on.x + right * pixels, y: on.y + down * pixels });
    this.tool = tool.to === undefined ? { ...tool, cross } : { kind: tool.kind, cross };
    this.sayTool();
    this.refresh();
  }

  private enter(): void {
    const { tool, view, size } = this;
    if (tool.kind === 'move') this.letGo();
    else if (tool.kind !== 'none') this.place(toScreen(view, size, tool.cross));
    else if (this.selected !== '') this.events.open(this.selected);
  }
}
