import {
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
  type ServerCapabilities,
  type TextDocumentIdentifier
} from 'vscode-languageserver';
import type { Workspace } from './workspace.ts';

/** One thing that the server does for an editor: what it tells the editor of it, and its answers. */
export interface Feature {
  readonly capabilities: ServerCapabilities;
  register(workspace: Workspace): void;
}

interface Asked {
  readonly textDocument: TextDocumentIdentifier;
}

/**
 * Answers a request about a text as it stood when it was asked. A request that the editor takes back, or whose text has
 * moved on meanwhile, is abandoned.
 */
export function aboutText<P extends Asked, R>(
  workspace: Workspace,
  answer: (params: P, token: CancellationToken) => Promise<R> | R
): (params: P, token: CancellationToken) => Promise<R> {
  return async (params, token) => {
    const version = workspace.documentOf(params.textDocument.uri)?.version;
    if (token.isCancellationRequested) throw abandoned();
    const result = await answer(params, token);
    if (token.isCancellationRequested) throw abandoned();
    if (workspace.documentOf(params.textDocument.uri)?.version !== version)
      throw new ResponseError(LSPErrorCodes.ContentModified, 'The text has changed since.');
    return result;
  };
}

/** Answers what an editor shows all along (lenses, hints): always of the newest text, so that nothing jumps. */
export function aboutNewestText<P extends Asked, R>(
  answer: (params: P, token: CancellationToken) => Promise<R>
): (params: P, token: CancellationToken) => Promise<R> {
  return async (params, token) => {
    const result = await answer(params, token);
    if (token.isCancellationRequested) throw abandoned();
    return result;
  };
}

export function abandoned(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'Nobody waits for this any more.');
}
