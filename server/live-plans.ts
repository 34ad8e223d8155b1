// Plans of open jobs as their panels have them, so that what differs can be told.
import { CancellationTokenSource, type CancellationToken } from 'vscode-languageserver';
import type { Evaluation } from '../language/paving.ts';
import type { LivePlan } from '../language/views/live-plan/live-plan.ts';
import { patchBetween } from '../language/views/live-plan/plan-patch.ts';
import type { Result } from './diagnostics.ts';
import { abandoned } from './feature.ts';
import type { PlanResult } from './plan-protocol.ts';
import type { Workspace } from './workspace.ts';

interface Sent {
  readonly number: number;
  readonly plan: LivePlan;
}

interface Running {
  readonly evaluation: Evaluation;
  readonly plan: Promise<LivePlan | undefined>;
  readonly stop: CancellationTokenSource;
}

export class LivePlans {
  private readonly workspace: Workspace;
  /** By job, as it was last sent. */
  private readonly sent = new Map<string, Sent>();
  /** By job, of its newest text that was asked about. */
  private readonly newest = new Map<string, { readonly evaluation: Evaluation; readonly plan: LivePlan }>();
  /** By job, as it is drawn now. */
  private readonly running = new Map<string, Running>();
  private numbers = 0;

  constructor(workspace: Workspace) {
    this.workspace = workspace;
  }

  /** The plan of a job, drawn once whoever asks; abandoned where its text has moved on, or nobody waits any more. */
  async planOf(result: Result, token: CancellationToken): Promise<LivePlan> {
    const { evaluation } = result;
    const known = this.newest.get(evaluation.file);
    if (known?.evaluation === evaluation) return known.plan;
    if (this.workspace.resultOf(evaluation.file)?.evaluation !== evaluation) throw abandoned();
    const running = this.running.get(evaluation.file);
    const plan = running?.evaluation === evaluation ? running.plan : this.begin(result);
    const drawn = await Promise.race([
      plan,
      new Promise<undefined>(resolve => token.onCancellationRequested(() => resolve(undefined)))
    ]);
    if (drawn === undefined || token.isCancellationRequested) throw abandoned();
    return drawn;
  }

  private begin(result: Result): Promise<LivePlan | undefined> {
    const { evaluation } = result;
    const { file } = evaluation;
    this.running.get(file)?.stop.cancel();
    const stop = new CancellationTokenSource();
    const plan = this.workspace.livePlanOf(result, stop.token).then(drawn => {
      if (this.running.get(file)?.stop === stop) this.running.delete(file);
      if (drawn !== undefined && !stop.token.isCancellationRequested)
        this.newest.set(file, { evaluation, plan: drawn });
      return drawn;
    });
    this.running.set(file, { evaluation, plan, stop });
    return plan;
  }

  /** The plan of the newest text, whole, or what differs from the one that the panel has. */
  async answer(address: string, has: number | undefined, token: CancellationToken): Promise<PlanResult> {
    for (;;) {
      const result = await this.workspace.settled(address, token);
      if (token.isCancellationRequested) throw abandoned();
      if (result?.evaluation.job === undefined) return { problem: NO_JOB };
      const plan = await this.planOf(result, token);
      // Typed on meanwhile: what would be sent is old already.
      if ((await this.workspace.settled(address, token))?.evaluation !== result.evaluation) continue;
      // Else it would count as sent, and what is asked next would have to be sent whole.
      if (token.isCancellationRequested) throw abandoned();
      return this.send(result.evaluation.file, plan, has);
    }
  }

  private send(file: string, plan: LivePlan, has: number | undefined): PlanResult {
    const before = this.sent.get(file);
    if (before?.plan === plan && before.number === has) return { number: has, since: has, patch: {} };
    const number = ++this.numbers;
    this.sent.set(file, { number, plan });
    if (before === undefined || before.number !== has) return { number, plan };
    return { number, since: has, patch: patchBetween(before.plan, plan) };
  }

  drop(file: string): void {
    this.sent.delete(file);
    this.newest.delete(file);
    this.running.get(file)?.stop.cancel();
    this.running.delete(file);
  }

  /** How many are held. */
  get size(): number {
    return this.sent.size;
  }
}

export const NO_JOB = 'There is no job in this file. Open the file that has it: its plan is drawn.';
