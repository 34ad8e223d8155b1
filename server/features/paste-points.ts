import { pointsFromTable } from '../../language/editing/paste-points.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutText, type Feature } from '../feature.ts';
import { pointsFromTableRequest, type PointsFromTableParams, type PointsFromTableResult } from '../protocol.ts';

/** Coordinates out of a table as points of the job. */
export const pastePoints: Feature = {
  capabilities: {},
  register(workspace) {
    workspace.connection.onRequest(
      pointsFromTableRequest,
      aboutText(workspace, async (params: PointsFromTableParams, token): Promise<PointsFromTableResult> => {
        const { textDocument, range, table } = params;
        // A file of points alone takes after the job that uses it.
        const result = await workspace.settled(textDocument.uri, token);
        const seen = await workspace.look(textDocument.uri);
        const document = workspace.documentOf(textDocument.uri);
        if (seen === undefined || document === undefined) return { problem: 'This file is no job spec.' };
        const at = { start: document.offsetAt(range.start), end: document.offsetAt(range.end) };
        const found = pointsFromTable(table, seen, at, result?.evaluation.job?.system);
        if ('problem' in found) return found;
        const choices = found.choices.map(({ title, text, place }) => ({ title, text, range: rangeOf(place) }));
        return { choices, isPlain: found.isPlain };
      })
    );
  }
};
