// The panel of a comparison, in the editor's page for it: it shows what it is sent, and tells what is to be opened.
import { comparisonToDom } from './comparison-to-dom.ts';
import { isPanelState, isToPanel, type FromPanel, type PanelState, type ToPanel } from './messages.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPanel): void;
  getState(): unknown;
  setState(state: PanelState): void;
};

const editor = acquireVsCodeApi();
const main = document.querySelector('main')!;
const page = document.scrollingElement!;
const kept = editor.getState();
/** Where the person had scrolled to before the panel was hidden; nought from when it is shown again. */
let scrollBefore = isPanelState(kept) ? kept.scroll : 0;
let state: PanelState | undefined;

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (isToPanel(data)) show(data);
});
window.addEventListener('scroll', () => {
  if (state !== undefined) keep({ ...state, scroll: page.scrollTop });
});
editor.postMessage({ kind: 'ready' });

function show(message: ToPanel): void {
  const scroll = Math.max(page.scrollTop, scrollBefore);
  const focused = document.activeElement?.getAttribute('data-key');
  main.replaceChildren(...contentOf(message));
  if (focused !== null && focused !== undefined) focusOn(focused);
  page.scrollTop = scroll;
  scrollBefore = 0;
  keep({ about: message.about, scroll: page.scrollTop });
}

function contentOf(message: ToPanel): Node[] {
  if (message.kind === 'comparison') {
    const { comparison, words, version } = message;
    return comparisonToDom(comparison, {
      words,
      open: opening => editor.postMessage({ kind: 'open', version, ...opening })
    });
  }
  const problem = document.createElement('p');
  problem.setAttribute('role', 'status');
  problem.textContent = message.problem;
  return [problem];
}

function focusOn(key: string): void {
  const again = [...main.querySelectorAll<HTMLElement>('button[data-key]')].find(
    found => found.getAttribute('data-key') === key
  );
  again?.focus({ preventScroll: true });
}

function keep(next: PanelState): void {
  state = next;
  editor.setState(next);
}
