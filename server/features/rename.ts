import { LSPErrorCodes, ResponseError, type PrepareRenameResult, type WorkspaceEdit } from 'vscode-languageserver';
import { renameableAt, renamed, type Refusal } from '../../language/editing/rename.ts';
import { rangeOf } from '../diagnostics.ts';
import { workspaceEdit } from '../edits.ts';
import { aboutText, type Feature } from '../feature.ts';
import { seenAt } from '../locations.ts';

/** Gives a thing another name in every job spec of the folder that sees it; refused where something would change its meaning. */
export const rename: Feature = {
  capabilities: { renameProvider: { prepareProvider: true } },
  register(workspace) {
    workspace.connection.onPrepareRename(
      aboutText(workspace, async (params, token): Promise<PrepareRenameResult> => {
        const around = await workspace.lookAround(params.textDocument.uri, token);
        const at = await seenAt(workspace, params);
        if (at === undefined) throw refusal(UNREADABLE);
        const found = renameableAt(around.seen, at.seen, at.offset);
        if ('refused' in found) throw refusal(found);
        return { range: rangeOf(found.place), placeholder: found.name };
      })
    );
    workspace.connection.onRenameRequest(
      aboutText(workspace, async (params, token): Promise<WorkspaceEdit | null> => {
        const around = await workspace.lookAround(params.textDocument.uri, token);
        if (!around.all) throw refusal(TOO_MANY);
        const at = await seenAt(workspace, params);
        if (at === undefined) throw refusal(UNREADABLE);
        const { seen, offset } = at;
        const steps = renamed(around.seen, seen, offset, params.newName, seen.parse);
        const renaming = await workspace.sliced(steps, token);
        if (renaming === undefined) return null;
        if ('refused' in renaming) throw refusal(renaming);
        return workspaceEdit(workspace, seen.files, renaming.changes);
      })
    );
  }
};

const UNREADABLE: Refusal = { refused: 'This file can’t be read.' };

const TOO_MANY: Refusal = {
  refused:
    'This folder holds more job specs than can be looked through, so the name could be left behind in some. Open a smaller folder.'
};

function refusal({ refused }: Refusal): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, refused);
}
