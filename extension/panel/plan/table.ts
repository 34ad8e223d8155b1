// All that the plan holds, as tables by kind: nothing has to be seen to be known.
import type { LivePlan, LiveThing } from '../../../server/plan-protocol.ts';
import { button, html } from './html.ts';
import type { PlanWords } from './messages.ts';
import { fillIn } from './words.ts';

/** Rows of one kind at first, and with each wish for more: a page of thousands is slow to read and to make. */
const ROWS_AT_ONCE = 200;

export interface TableEvents {
  /** Selects it and shows it on the plan. */
  readonly show: (thing: string) => void;
  readonly open: (thing: string) => void;
}

export class TableView {
  readonly element: HTMLElement;
  private readonly events: TableEvents;
  /** How many rows are shown of a kind, where more were asked for. */
  private readonly shownOf = new Map<string, number>();
  private last: { readonly plan: LivePlan; readonly words: PlanWords } | undefined;

  constructor(events: TableEvents) {
    this.events = events;
    // It scrolls, so it has to be reached by keys.
    this.element = html('section', { class: 'table', tabindex: '0', 'aria-labelledby': 'table-heading' });
  }

  show(plan: LivePlan, words: PlanWords): void {
    this.last = { plan, words };
    const focused = document.activeElement?.getAttribute('data-key');
    const { scrollTop } = this.element;
    const kinds = new Map<string, LiveThing[]>();
    for (const thing of plan.things) {
      const known = kinds.get(thing.kind);
      if (known === undefined) kinds.set(thing.kind, [thing]);
      else known.push(thing);
    }
    this.element.replaceChildren(
      html('h2', { id: 'table-heading' }, words.tableHeading),
      html('p', {}, plan.description),
      ...[...kinds].flatMap(([kind, things], index) => this.kindElements(kind, things, index))
    );
    this.element.scrollTop = scrollTop;
    if (focused !== null && focused !== undefined) this.focusOn(focused);
  }

  private kindElements(kind: string, things: readonly LiveThing[], index: number): Node[] {
    const { words } = this.last!;
    const most = this.shownOf.get(kind) ?? ROWS_AT_ONCE;
    const id = `kind-${index}`;
    const heads = [words.tableName, words.tableFacts, words.openText];
    const left = things.length - most;
    const more = (): void => {
      this.shownOf.set(kind, most + ROWS_AT_ONCE);
      this.show(this.last!.plan, this.last!.words);
      this.focusOn(`name ${things[most]?.key ?? ''}`);
    };
    return [
      html('h3', { id }, kind),
      html(
        'table',
        { 'aria-labelledby': id },
        html('thead', {}, html('tr', {}, ...heads.map(head => html('th', { scope: 'col' }, head)))),
        html('tbody', {}, ...things.slice(0, most).map(thing => this.row(thing)))
      ),
      ...(left > 0 ? [button(fillIn(words.tableMore, String(Math.min(left, ROWS_AT_ONCE))), {}, more)] : [])
    ];
  }

  private row(thing: LiveThing): HTMLElement {
    const { words } = this.last!;
    const shown = button(thing.name, { title: words.tableShow, 'data-key': `name ${thing.key}` }, () =>
      this.events.show(thing.key)
    );
    const text = button(
      words.openText,
      { 'aria-label': fillIn(words.openTextOf, thing.name), 'data-key': `text ${thing.key}` },
      () => this.events.open(thing.key)
    );
    const facts = [
      ...(thing.stale ? [words.asBefore] : []),
      ...thing.facts.map(([what, value]) => `${what}: ${value}`)
    ];
    return html(
      'tr',
      {},
      html('th', { scope: 'row' }, shown),
      html('td', {}, facts.join('; ')),
      html('td', {}, ...(thing.leads ? [text] : []))
    );
  }

  private focusOn(key: string): void {
    const again = [...this.element.querySelectorAll<HTMLElement>('button[data-key]')].find(
      found => found.getAttribute('data-key') === key
    );
    again?.focus({ preventScroll: false });
  }
}
