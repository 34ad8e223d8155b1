// One set-up for the language server in Node and in a browser's worker: what differs is how files are read.
import { TextDocumentSyncKind, type Connection, type ServerCapabilities } from 'vscode-languageserver';
import type { Feature } from './feature.ts';
import { codeActions } from './features/code-actions.ts';
import { format } from './features/format.ts';
import { hover } from './features/hover.ts';
import { lenses } from './features/lenses.ts';
import { pastePoints } from './features/paste-points.ts';
import type { ReadInFolder } from './folder-files.ts';
import { Workspace } from './workspace.ts';

const FEATURES: readonly Feature[] = [hover, lenses, codeActions, format, pastePoints];

export function setUp(connection: Connection, read: ReadInFolder): Workspace {
  const workspace = new Workspace(connection, read);
  connection.onInitialize(({ workspaceFolders, capabilities }) => {
    workspace.begin(
      (workspaceFolders ?? []).map(({ uri }) => uri),
      capabilities
    );
    return { capabilities: allCapabilities() };
  });
  for (const feature of FEATURES) feature.register(workspace);
  workspace.listen();
  connection.listen();
  return workspace;
}

function allCapabilities(): ServerCapabilities {
  const own: ServerCapabilities = {
    textDocumentSync: TextDocumentSyncKind.Incremental,
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } }
  };
  return FEATURES.reduce<ServerCapabilities>(
    (all, { capabilities }) => ({
      ...all,
      ...capabilities,
      workspace: { ...all.workspace, ...capabilities.workspace }
    }),
    own
  );
}
