// A section of the job below the plan, as it is drawn and in words.
import type { DrawnElement } from '../../../server/protocol.ts';
import { drawingToDom } from '../drawing-to-dom.ts';
import { button, html } from './html.ts';
import type { PlanWords } from './messages.ts';

export class SectionView {
  readonly element: HTMLElement;
  private readonly closed: () => void;

  constructor(closed: () => void) {
    this.closed = closed;
    this.element = html('section', { class: 'section', tabindex: '0', 'aria-labelledby': 'section-heading' });
    this.element.hidden = true;
  }

  show(drawing: DrawnElement, text: string, words: PlanWords): void {
    const built = drawingToDom(drawing, document);
    const inWords = html('details', {}, html('summary', {}, words.sectionText), html('pre', {}, text));
    inWords.open = this.element.querySelector('details')?.open === true;
    this.fill(words, ...(built === undefined ? [] : [html('figure', {}, built)]), inWords);
  }

  get isOpen(): boolean {
    return !this.element.hidden;
  }

  problem(problem: string, words: PlanWords): void {
    this.fill(words, html('p', { role: 'status' }, problem));
  }

  private fill(words: PlanWords, ...inside: readonly Node[]): void {
    const close = button(words.close, {}, () => {
      this.element.hidden = true;
      this.element.replaceChildren();
      this.closed();
    });
    this.element.replaceChildren(
      html('div', { class: 'section-head' }, html('h2', { id: 'section-heading' }, words.sectionHeading), close),
      ...inside
    );
    this.element.hidden = false;
  }
}
