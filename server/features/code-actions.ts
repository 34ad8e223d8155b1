import { CodeActionKind, type CancellationToken, type CodeAction, type CodeActionParams } from 'vscode-languageserver';
import { aboutText, type Feature } from '../feature.ts';
import type { Workspace } from '../workspace.ts';
import { fixes } from './fixes.ts';
import { rewrites } from './rewrites.ts';

/** What is offered at a place of a text; an editor that asks for some kinds only (`context.only`) gets only those. */
export type ActionsAt = (
  workspace: Workspace,
  params: CodeActionParams,
  token: CancellationToken
) => Promise<CodeAction[]>;

export interface ActionProvider {
  /** Every kind of what it offers. */
  readonly kinds: readonly CodeActionKind[];
  readonly actionsAt: ActionsAt;
}

const PROVIDERS: readonly ActionProvider[] = [fixes, rewrites];

/** What the editor offers under its light bulb, on save, and in its menu. */
export const codeActions: Feature = {
  capabilities: { codeActionProvider: { codeActionKinds: PROVIDERS.flatMap(({ kinds }) => kinds) } },
  register(workspace) {
    workspace.connection.onCodeAction(
      aboutText(workspace, async (params, token) => {
        const asked = PROVIDERS.filter(({ kinds }) => kinds.some(kind => isAsked(kind, params.context.only)));
        const offered = await Promise.all(asked.map(({ actionsAt }) => actionsAt(workspace, params, token)));
        return offered.flat().filter(({ kind }) => kind === undefined || isAsked(kind, params.context.only));
      })
    );
  }
};

/** `source` asks for `source.fixAll` too; what changes a whole file is offered only where it is asked for. */
function isAsked(kind: CodeActionKind, only: readonly CodeActionKind[] | undefined): boolean {
  if (only === undefined) return !kind.startsWith(CodeActionKind.Source);
  return only.some(asked => asked === '' || kind === asked || kind.startsWith(`${asked}.`));
}
