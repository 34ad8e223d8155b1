// The page of the live plan: it shows what it is sent, and tells what the person does with it.
import { applyPatch } from './apply-patch.ts';
import { html } from './html.ts';
import { type FromPlan, isPlanState, isSoundAfter, isToPlan, type PlanState, type ToPlan } from './messages.ts';
import { PlanPage } from './page.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPlan): void;
  getState(): unknown;
  setState(state: PlanState): void;
};

const editor = acquireVsCodeApi();
const main = document.querySelector('main')!;
const stored = editor.getState();
/** What was kept by the page before this one. */
let kept = isPlanState(stored) ? stored : undefined;
let page: PlanPage | undefined;

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (isToPlan(data)) take(data);
});
editor.postMessage({ kind: 'ready' });

function take(message: ToPlan): void {
  if (message.kind !== 'plan') return takeOther(message);
  const { about, number, words, plan } = message;
  if (page?.about !== about) {
    page = new PlanPage(main, about, words, {
      post: said => editor.postMessage(said),
      keep: state => editor.setState(state)
    });
    if (kept?.about === about) {
      page.stage.restore(kept);
      if (kept.selected !== '') editor.postMessage({ kind: 'select', thing: kept.selected });
    }
    kept = undefined;
  }
  page.show(plan, number);
}

function takeOther(message: Exclude<ToPlan, { kind: 'plan' }>): void {
  switch (message.kind) {
    case 'problem':
      if (page?.about === message.about) return page.problem(message.problem);
      main.replaceChildren(html('p', { class: 'note', role: 'status' }, message.problem));
      // So that it comes back for the same job.
      if (kept?.about !== message.about) editor.setState({ about: message.about, turn: 0, hidden: [], selected: '' });
      return;
    case 'patch':
      return patch(message);
    case 'at-cursor':
      return page?.stage.atTheCursor(message.things);
    case 'section':
      return page?.showSection(message);
    case 'no-section':
      return page?.noSection(message.problem);
    case 'not-dragged':
      page?.stage.giveUpMoving();
      return page?.say(message.problem);
  }
}

/** Where it doesn't fit what is shown, the plan is asked for as a whole. */
function patch({ since, number, patch }: Extract<ToPlan, { kind: 'patch' }>): void {
  const plan = page?.plan !== undefined && page.number === since ? applyPatch(page.plan, patch) : undefined;
  if (plan !== undefined && isSoundAfter(plan, patch)) page!.show(plan, number);
  else editor.postMessage({ kind: 'ready' });
}
