import { applyChanges } from '../../language/editing/apply-changes.ts';
import { dragEdit } from '../../language/editing/dragging/drag-edit.ts';
import { handlePlace } from '../../language/editing/dragging/handle-places.ts';
import type { Point } from '../../language/geometry/index.ts';
import type { Job } from '../../language/job/job.ts';
import { lower } from '../../language/lowering/lower.ts';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';

/** A job as it stands in texts, ready to be dragged in. */
export class DraggedJob {
  readonly paving: Paving;
  readonly evaluation: Evaluation;
  /** As lowered from the texts as they stand. */
  readonly job: Job;
  private readonly main: string;

  private constructor(paving: Paving, main: string, evaluation: Evaluation, job = evaluation.job!) {
    this.paving = paving;
    this.main = main;
    this.evaluation = evaluation;
    this.job = job;
  }

  static async of(
    texts: Readonly<Record<string, string>>,
    main = 'job.paving',
    paving = new Paving(inMemory(texts))
  ): Promise<DraggedJob> {
    for (const [file, text] of Object.entries(texts)) paving.setText(file, text);
    await paving.load(main);
    return new DraggedJob(paving, main, drain(paving.evaluate(main))!);
  }

  get look() {
    return this.paving.look(this.main)!;
  }

  textOf(file: string): string {
    return this.look.project.texts.find(text => text.file === file)!.parsed.text;
  }

  /** Where the handle of a thing lies, as the plan shows it. */
  at(thing: string): Point | undefined {
    const { numbers } = this.evaluation;
    if (!thing.endsWith('/start')) return handlePlace(this.job, thing);
    const laid = numbers!.laid.find(({ area }) => thing === `${area.key}/start`)?.laid;
    return laid?.laid.parts.find(({ part }) => part === 'field')?.how?.frame.origin;
  }

  drag(thing: string, to: Point) {
    return dragEdit({ ...this.look, evaluation: this.evaluation, parse: this.paving.parse }, thing, to);
  }

  /** All things with handles, by their keys. */
  get things(): string[] {
    const { points, boxes, drains, areas } = this.job;
    const ofAreas = areas.flatMap(({ key, outline, insets }) => [
      ...insets.map(inset => inset.key),
      `${key}/start`,
      ...outline.map(({ arc }, index) => (arc ? `${key}/side-${index + 1}/arc` : `${key}/corner-${index + 1}`))
    ]);
    return [...[...points, ...boxes, ...drains].map(({ key }) => key), ...ofAreas];
  }

  /** With another text of a file, without its laying; this one is not dragged in any more until its text is put back. */
  with(file: string, text: string): DraggedJob {
    this.paving.setText(file, text);
    return new DraggedJob(this.paving, this.main, this.evaluation, lower(this.look.project).job!);
  }

  /** The text that a drag leads to, and its file; or why there is none. */
  dragged(thing: string, to: Point): { readonly file: string; readonly text: string } | { readonly why: string } {
    const drag = this.drag(thing, to);
    return 'why' in drag ? drag : { file: drag.file, text: applyChanges(this.textOf(drag.file), drag.edits) };
  }
}
