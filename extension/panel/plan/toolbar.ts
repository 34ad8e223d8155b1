import type { Content, LivePlan } from '../../../server/plan-protocol.ts';
import { button, html, setAll } from './html.ts';
import type { PlanWords } from './messages.ts';

export interface ToolbarEvents {
  readonly fit: () => void;
  readonly zoom: (closer: boolean) => void;
  readonly turn: () => void;
  readonly measure: () => void;
  readonly sectionBetween: () => void;
  readonly sectionAlong: (key: string) => void;
  readonly show: (content: Content, isShown: boolean) => void;
  readonly table: () => void;
}

export interface ToolbarState {
  readonly isTurned: boolean;
  readonly isMeasuring: boolean;
  readonly isTable: boolean;
  readonly sections: LivePlan['sections'];
  readonly present: readonly Content[];
  readonly hidden: ReadonlySet<Content>;
}

export class Toolbar {
  readonly element: HTMLElement;
  private readonly words: PlanWords;
  private readonly events: ToolbarEvents;
  private readonly turn: HTMLButtonElement;
  private readonly measure: HTMLButtonElement;
  private readonly table: HTMLButtonElement;
  private readonly section: Popup;
  private readonly content: Popup;

  constructor(words: PlanWords, events: ToolbarEvents) {
    this.words = words;
    this.events = events;
    this.turn = button(words.turnToEdge, { title: words.turnToEdgeTip, 'aria-pressed': 'false' }, events.turn);
    this.measure = button(words.measure, { title: words.measureTip, 'aria-pressed': 'false' }, events.measure);
    this.table = button(words.table, { title: words.tableTip, 'aria-pressed': 'false' }, events.table);
    this.section = new Popup(words.section, words.sectionTip);
    this.content = new Popup(words.content, words.contentTip);
    this.element = html(
      'div',
      { class: 'toolbar', role: 'group', 'aria-label': words.tools },
      button(words.fit, { title: words.fitTip }, events.fit),
      button(words.zoomIn, { title: words.zoomInTip }, () => events.zoom(true)),
      button(words.zoomOut, { title: words.zoomOutTip }, () => events.zoom(false)),
      this.turn,
      this.measure,
      this.section.element,
      this.content.element,
      this.table
    );
    document.addEventListener('pointerdown', ({ target }) => {
      for (const popup of [this.section, this.content]) popup.closeUnless(target as Node | null);
    });
  }

  update({ isTurned, isMeasuring, isTable, sections, present, hidden }: ToolbarState): void {
    const { words, events } = this;
    setAll(this.turn, { 'aria-pressed': String(isTurned), title: isTurned ? words.turnBackTip : words.turnToEdgeTip });
    setAll(this.measure, { 'aria-pressed': String(isMeasuring) });
    setAll(this.table, { 'aria-pressed': String(isTable) });
    const choose = (press: () => void) => (): void => {
      this.section.close();
      press();
    };
    this.section.fill(JSON.stringify(sections), () => [
      ...sections.map(({ key, name }) =>
        button(
          name,
          {},
          choose(() => events.sectionAlong(key))
        )
      ),
      button(words.sectionBetween, {}, choose(events.sectionBetween))
    ]);
    this.content.fill(JSON.stringify([present, [...hidden]]), () =>
      present.map(content => this.check(content, hidden))
    );
  }

  private check(content: Content, hidden: ReadonlySet<Content>): HTMLElement {
    const box = html('input', { type: 'checkbox', 'data-key': content });
    box.checked = !hidden.has(content);
    box.addEventListener('change', () => this.events.show(content, box.checked));
    return html('label', {}, box, this.words[`content-${content}`]);
  }
}

/** What a button opens below itself. */
class Popup {
  readonly element: HTMLDetailsElement;
  private readonly summary: HTMLElement;
  private readonly body = html('div', { class: 'popup-body' });
  private filled: string | undefined;

  constructor(words: string, title: string) {
    this.summary = html('summary', { title }, words);
    this.element = html('details', { class: 'popup' }, this.summary, this.body);
    this.element.addEventListener('keydown', event => {
      if (event.key !== 'Escape' || !this.element.open) return;
      event.stopPropagation();
      this.close();
    });
  }

  /** Made anew only where it reads otherwise; what has the focus keeps it. */
  fill(now: string, make: () => readonly Node[]): void {
    if (now === this.filled) return;
    this.filled = now;
    const focused = [...this.body.querySelectorAll('input,button')].findIndex(one => one === document.activeElement);
    this.body.replaceChildren(...make());
    if (focused >= 0) this.body.querySelectorAll<HTMLElement>('input,button')[focused]?.focus();
  }

  close(): void {
    const hasFocus = this.body.contains(document.activeElement);
    this.element.open = false;
    if (hasFocus) this.summary.focus();
  }

  closeUnless(target: Node | null): void {
    if (this.element.open && !this.element.contains(target)) this.element.open = false;
  }
}
