// What is known of the thing that is pointed at, or else of the one that is selected.
import type { LiveThing } from '../../../server/plan-protocol.ts';
import { html } from './html.ts';
import type { PlanWords } from './messages.ts';
import { fillIn } from './words.ts';

export class FactsView {
  readonly element: HTMLElement;
  private readonly body = html('div', { 'aria-live': 'polite' });
  private readonly heading = html('h2', { id: 'facts-heading' });
  private shown: unknown;

  constructor() {
    // It scrolls where there is little room, so it has to be reached by keys.
    const attributes = { class: 'facts', tabindex: '0', 'aria-labelledby': 'facts-heading' };
    this.element = html('section', attributes, this.heading, this.body);
  }

  show(thing: LiveThing | undefined, isSelected: boolean, words: PlanWords): void {
    // What is said again is not read out again.
    const now = JSON.stringify([thing, isSelected]);
    if (now === this.shown) return;
    this.shown = now;
    this.heading.textContent = words.details;
    this.body.replaceChildren(
      ...(thing === undefined ? [html('p', { class: 'hint' }, words.pointAtSomething)] : told(thing, isSelected, words))
    );
  }
}

function told(thing: LiveThing, isSelected: boolean, words: PlanWords): Node[] {
  const name = isSelected ? fillIn(words.selected, thing.name) : thing.name;
  const notes = [
    ...(thing.stale ? [words.asBefore] : []),
    ...(thing.handle === undefined ? [] : [thing.handle.why ?? words.canBeMoved]),
    ...(thing.leads ? [] : [fillIn(words.noPlace, thing.name)])
  ];
  const facts = thing.facts.map(([what, value]) => html('div', {}, html('dt', {}, what), html('dd', {}, value)));
  return [
    html('p', { class: 'facts-name' }, html('span', { class: 'kind' }, `${thing.kind}: `), html('strong', {}, name)),
    ...(facts.length === 0 ? [] : [html('dl', {}, ...facts)]),
    ...notes.map(note => html('p', { class: 'hint' }, note))
  ];
}
