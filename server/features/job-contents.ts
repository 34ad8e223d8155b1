import type { CancellationToken } from 'vscode-languageserver';
import { type ContentRow, rowWith, shownValue } from '../../language/views/job-contents/content-row.ts';
import { jobContents as contentsOf } from '../../language/views/job-contents/job-contents.ts';
import { tableOf } from '../../language/views/job-contents/table-of-row.ts';
import type { Result } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import type { FolderFiles } from '../folder-files.ts';
import { locationOf } from '../locations.ts';
import {
  type ContentsRow,
  contentsTableRequest,
  type ContentsTableParams,
  type ContentsTableResult,
  jobContentsRequest,
  type JobContentsParams,
  type JobContentsResult
} from '../plan-protocol.ts';
import type { Workspace } from '../workspace.ts';

/** What a job holds, for the side bar: rows with their places, and any of them as a table. */
export const jobContents: Feature = {
  capabilities: {},
  register(workspace) {
    const { connection } = workspace;
    connection.onRequest(
      jobContentsRequest,
      aboutNewestText(async ({ textDocument }: JobContentsParams, token): Promise<JobContentsResult> => {
        const found = await rowsOf(workspace, textDocument.uri, token);
        if (found === undefined) return null;
        const { evaluation, files } = found.result;
        return { uri: workspace.editorsAddress(evaluation.file), row: shown(workspace, files, found.row) };
      })
    );
    connection.onRequest(
      contentsTableRequest,
      aboutNewestText(async ({ textDocument, row: id }: ContentsTableParams, token): Promise<ContentsTableResult> => {
        const found = await rowsOf(workspace, textDocument.uri, token);
        const row = found && rowWith(found.row, id);
        return row === undefined ? {} : { table: tableOf(row) };
      })
    );
  }
};

/** Of the newest text. */
async function rowsOf(
  workspace: Workspace,
  uri: string,
  token: CancellationToken
): Promise<{ readonly result: Result; readonly row: ContentRow } | undefined> {
  const result = await workspace.settled(uri, token);
  if (result === undefined) return undefined;
  const row = contentsOf(result.evaluation, await workspace.figuresOf(result, token));
  return row && { result, row };
}

function shown(workspace: Workspace, files: FolderFiles, row: ContentRow): ContentsRow {
  const { id, kind, label, place, before, inside } = row;
  return {
    id,
    kind,
    label,
    value: shownValue(row),
    ...(before === undefined ? {} : { stale: true }),
    ...(place === undefined ? {} : { place: locationOf(workspace, files, place) }),
    inside: inside.map(each => shown(workspace, files, each))
  };
}
