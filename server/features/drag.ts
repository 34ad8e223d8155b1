import { dragEdit } from '../../language/editing/dragging/drag-edit.ts';
import type { Point } from '../../language/geometry/index.ts';
import type { Evaluation } from '../../language/paving.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, abandoned, type Feature } from '../feature.ts';
import { dragRequest, type DragParams, type DragResult } from '../plan-protocol.ts';
import type { Workspace } from '../workspace.ts';

/** How a text reads once a thing of the plan is dragged elsewhere. The editor makes the edits, so that one undo takes them back. */
export const drag: Feature = {
  capabilities: {},
  register(workspace) {
    workspace.connection.onRequest(
      dragRequest,
      aboutText(workspace, async ({ textDocument, thing, to: [x, y] }: DragParams, token): Promise<DragResult> => {
        const result = await workspace.settled(textDocument.uri, token);
        if (result?.evaluation.job === undefined) return { problem: 'There is no job in this file.' };
        return dragged(workspace, result.evaluation, thing, { x: x / MILLIMETRES, y: y / MILLIMETRES });
      })
    );
  }
};

const MILLIMETRES = 1000;

const THERE_ALREADY = 'It lies there already, as finely as its measures are written.';

async function dragged(workspace: Workspace, evaluation: Evaluation, thing: string, to: Point): Promise<DragResult> {
  const seen = await workspace.look(evaluation.file);
  // A file that the job uses may have moved on as well.
  const isOfNow = seen?.project.texts.every(({ parsed }, index) => parsed.text === evaluation.texts[index]?.text);
  if (seen === undefined || isOfNow !== true) throw abandoned();
  const found = dragEdit({ ...seen, evaluation }, thing, to);
  if ('why' in found) return { problem: found.why };
  if (found.edits.length === 0) return { problem: THERE_ALREADY };
  const uri = workspace.editorsAddress(seen.files.uriOf(found.file));
  return {
    uri,
    version: workspace.documentOf(uri)?.version ?? null,
    edits: found.edits.map(({ place, text }) => ({ range: rangeOf(place), newText: text }))
  };
}
