// The page as a whole: heading, tools, drawing, what is told of single things, legend, table, section.
import type { LivePlan, SectionLine } from '../../../server/plan-protocol.ts';
import { FactsView } from './facts.ts';
import { html } from './html.ts';
import { LegendView } from './legend.ts';
import type { FromPlan, PlanState, PlanWords, ToPlan } from './messages.ts';
import { prepare } from './prepared.ts';
import { SectionView } from './section-view.ts';
import { Stage } from './stage.ts';
import { TableView } from './table.ts';
import { Toolbar } from './toolbar.ts';

export interface PageEvents {
  readonly post: (message: FromPlan) => void;
  readonly keep: (state: PlanState) => void;
}

export class PlanPage {
  readonly about: string;
  readonly stage: Stage;
  plan: LivePlan | undefined;
  number = -1;
  private readonly words: PlanWords;
  private readonly events: PageEvents;
  private readonly toolbar: Toolbar;
  private readonly facts = new FactsView();
  private readonly legend = new LegendView();
  private readonly table: TableView;
  private readonly section: SectionView;
  private readonly title = html('h1', {});
  private readonly notes = html('div', { class: 'notes', role: 'status' });
  private readonly said = html('p', { class: 'said', role: 'status' });
  private along: SectionLine | undefined;
  private isTable = false;
  private kept = '';

  constructor(main: Element, about: string, words: PlanWords, events: PageEvents) {
    this.about = about;
    this.words = words;
    this.events = events;
    const { post } = events;
    this.stage = new Stage(words, {
      select: thing => post({ kind: 'select', thing }),
      open: thing => this.open(thing),
      drag: (thing, { x, y }) => post({ kind: 'drag', thing, to: [x, y] }),
      section: (from, to) => this.askSection({ from: [from.x, from.y], to: [to.x, to.y] }),
      changed: () => this.update(),
      say: said => this.say(said)
    });
    this.table = new TableView({
      show: thing => {
        this.showTable(false);
        this.stage.element.focus();
        this.stage.selectThing(thing, true);
      },
      open: thing => this.open(thing)
    });
    this.section = new SectionView(() => this.stage.element.focus());
    this.toolbar = this.makeToolbar();
    const work = html('div', { class: 'work' }, this.stage.element, this.said, this.table.element);
    const side = html('div', { class: 'side' }, this.facts.element, this.legend.element, keysElement(words));
    main.replaceChildren(
      html('header', {}, this.title, this.toolbar.element, this.notes),
      work,
      this.section.element,
      side
    );
    this.showTable(false);
  }

  private makeToolbar(): Toolbar {
    const { stage } = this;
    return new Toolbar(this.words, {
      fit: () => stage.fit(),
      zoom: closer => stage.zoom(closer),
      turn: () => stage.turnAbout(),
      measure: () => {
        stage.useTool(stage.tool.kind === 'measure' ? 'none' : 'measure');
        stage.element.focus();
      },
      sectionBetween: () => {
        stage.useTool('section');
        stage.element.focus();
      },
      sectionAlong: key => {
        this.say(this.words.sectionWaiting);
        this.askSection({ key });
      },
      show: (content, isShown) => stage.hide(content, isShown),
      table: () => this.showTable(!this.isTable)
    });
  }

  show(plan: LivePlan, number: number): void {
    this.plan = plan;
    this.number = number;
    this.title.textContent = plan.title;
    this.tell(plan.notes);
    this.stage.element.classList.remove('dimmed');
    this.stage.show(prepare(plan));
    if (this.isTable) this.table.show(plan, this.words);
    // Another ground may be cut now.
    if (this.section.isOpen && this.along !== undefined) this.askSection(this.along);
    this.update();
  }

  private askSection(along: SectionLine): void {
    this.along = along;
    this.events.post({ kind: 'section', along });
  }

  /** What was shown stays, dimmed. */
  problem(problem: string): void {
    this.tell([problem]);
    this.stage.giveUpMoving();
    this.stage.element.classList.add('dimmed');
  }

  showSection({ drawing, text }: Extract<ToPlan, { kind: 'section' }>): void {
    this.say('');
    this.section.show(drawing, text, this.words);
  }

  noSection(problem: string): void {
    this.say('');
    this.section.problem(problem, this.words);
  }

  say(said: string): void {
    if (this.said.textContent !== said) this.said.textContent = said;
  }

  /** Where the text has no place for it, that is said. */
  private open(thing: string): void {
    const known = this.stage.thing(thing);
    if (known === undefined || known.leads) this.events.post({ kind: 'open', thing });
  }

  /** What is said again is not read out again. */
  private tell(notes: readonly string[]): void {
    const now = [...this.notes.children].map(({ textContent }) => textContent);
    if (JSON.stringify(now) === JSON.stringify(notes)) return;
    this.notes.replaceChildren(...notes.map(note => html('p', { class: 'note' }, note)));
  }

  private showTable(isTable: boolean): void {
    this.isTable = isTable;
    this.stage.element.hidden = isTable;
    this.said.hidden = isTable;
    this.table.element.hidden = !isTable;
    if (isTable && this.plan !== undefined) this.table.show(this.plan, this.words);
    this.update();
  }

  private update(): void {
    const { stage, plan } = this;
    if (plan === undefined || stage.prepared === undefined) return;
    const { hidden, hovered, selected, scene, tool } = stage;
    const told = stage.thing(hovered ?? selected) ?? stage.thing(selected);
    this.facts.show(told, told !== undefined && told.key === selected, this.words);
    this.legend.show(plan.legend, hidden, scene, this.words);
    this.toolbar.update({
      isTurned: stage.turn !== 0,
      isMeasuring: tool.kind === 'measure',
      isTable: this.isTable,
      sections: plan.sections,
      present: stage.prepared.present,
      hidden
    });
    this.keep();
  }

  private keep(): void {
    const state: PlanState = { about: this.about, ...this.stage.kept };
    const now = JSON.stringify(state);
    if (now === this.kept) return;
    this.kept = now;
    this.events.keep(state);
  }
}

function keysElement(words: PlanWords): HTMLElement {
  const { keyPan, keyZoom, keyWalk, keyOpen, keyMeasure, keyMove, keyEscape } = words;
  const keys = [keyPan, keyZoom, keyWalk, keyOpen, keyMeasure, keyMove, keyEscape];
  return html(
    'details',
    { class: 'keys' },
    html('summary', {}, words.keys),
    html('ul', { id: 'keys' }, ...keys.map(key => html('li', {}, key)))
  );
}
