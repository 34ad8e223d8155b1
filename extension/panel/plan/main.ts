// The page of the live plan: it shows what it is sent, and tells what the person does with it.
import { applyPatch } from './apply-patch.ts';
import { html } from './html.ts';
import { type FromPlan, isPlanState, isToPlan, type PlanState, type ToPlan } from './messages.ts';
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
    if (kept?.about === about) page.stage.restore(kept);
    kept = undefined;
  }
  page.show(plan, number);
}

function takeOther(message: Exclude<ToPlan, { kind: 'plan' }>): void {
  switch (message.kind) {
    case 'problem':
      if (page?.about === message.about) page.problem(message.problem);
      else main.replaceChildren(html('p', { class: 'note', role: 'status' }, message.problem));
      return;
    case 'patch':
      if (page?.plan === undefined || page.number !== message.since) editor.postMessage({ kind: 'ready' });
      else page.show(applyPatch(page.plan, message.patch), message.number);
      return;
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
