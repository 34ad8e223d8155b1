// Plans of open jobs as their panels have them, so that what differs can be told.
import type { CancellationToken } from 'vscode-languageserver';
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

export class LivePlans {
  private readonly workspace: Workspace;
  /** By job, as it was last sent. */
  private readonly sent = new Map<string, Sent>();
  /** By job, of its newest text that was asked about. */
  private readonly newest = new Map<string, { readonly evaluation: Evaluation; readonly plan: LivePlan }>();
  private numbers = 0;

  constructor(workspace: Workspace) {
    this.workspace = workspace;
  }

  /** The plan of a job; what a request does not get any more is abandoned. */
  async planOf(result: Result, token: CancellationToken): Promise<LivePlan> {
    const { evaluation } = result;
    const known = this.newest.get(evaluation.file);
    if (known?.evaluation === evaluation) return known.plan;
    const plan = await this.workspace.livePlanOf(result, token);
    if (plan === undefined) throw abandoned();
    if (this.workspace.resultOf(evaluation.file)?.evaluation === evaluation)
      this.newest.set(evaluation.file, { evaluation, plan });
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
  }

  /** How many are held. */
  get size(): number {
    return this.sent.size;
  }
}

export const NO_JOB = 'There is no job in this file. Open the file that has it: its plan is drawn.';
