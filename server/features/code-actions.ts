import {
  CodeActionKind,
  CodeActionTriggerKind,
  type CancellationToken,
  type CodeAction,
  type CodeActionParams
} from 'vscode-languageserver';
import { aboutText, type Feature } from '../feature.ts';
import type { Workspace } from '../workspace.ts';
import { fixes } from './fixes.ts';
import { offers } from './offers.ts';
import { rewrites } from './rewrites.ts';

/** What is asked about a place of a text. */
export interface AskedActions extends Pick<CodeActionParams, 'textDocument' | 'range'> {
  /** The editor asks by itself, at every move of the cursor, to know whether to show its light bulb. */
  readonly isUnasked: boolean;
  /** Whether actions of a kind are asked for. */
  readonly wants: (kind: CodeActionKind) => boolean;
}

export type ActionsAt = (workspace: Workspace, asked: AskedActions, token: CancellationToken) => Promise<CodeAction[]>;

export interface ActionProvider {
  /** Every kind of what it offers. */
  readonly kinds: readonly CodeActionKind[];
  /** Offers only kinds that are wanted, and does no work for others. */
  readonly actionsAt: ActionsAt;
}

const PROVIDERS: readonly ActionProvider[] = [fixes, rewrites, offers];

/** What the editor offers under its light bulb, on save, and in its menu. */
export const codeActions: Feature = {
  capabilities: { codeActionProvider: { codeActionKinds: [...new Set(PROVIDERS.flatMap(({ kinds }) => kinds))] } },
  register(workspace) {
    workspace.connection.onCodeAction(
      aboutText(workspace, async ({ textDocument, range, context }, token) => {
        const isUnasked = context.triggerKind === CodeActionTriggerKind.Automatic;
        const asked: AskedActions = { textDocument, range, isUnasked, wants: kind => isAsked(kind, context.only) };
        const providers = PROVIDERS.filter(({ kinds }) => kinds.some(asked.wants));
        return (await Promise.all(providers.map(({ actionsAt }) => actionsAt(workspace, asked, token)))).flat();
      })
    );
  }
};

/** `source` asks for `source.fixAll` too; what changes a whole file is offered only where it is asked for. */
function isAsked(kind: CodeActionKind, only: readonly CodeActionKind[] | undefined): boolean {
  if (only === undefined) return !kind.startsWith(CodeActionKind.Source);
  return only.some(asked => asked === '' || kind === asked || kind.startsWith(`${asked}.`));
}
