// One set-up for the language server in Node and in a browser's worker: what differs is how files are read.
import { TextDocumentSyncKind, type Connection, type ServerCapabilities } from 'vscode-languageserver';
import type { Feature } from './feature.ts';
import { codeActions } from './features/code-actions.ts';
import { colours } from './features/colours.ts';
import { comparison } from './features/comparison.ts';
import { completion } from './features/completion.ts';
import { contents } from './features/contents.ts';
import { definition } from './features/definition.ts';
import { drag } from './features/drag.ts';
import { folding } from './features/folding.ts';
import { format } from './features/format.ts';
import { highlights } from './features/highlights.ts';
import { hints } from './features/hints.ts';
import { hover } from './features/hover.ts';
import { jobContents } from './features/job-contents.ts';
import { lenses } from './features/lenses.ts';
import { links } from './features/links.ts';
import { movedFiles } from './features/moved-files.ts';
import { newJob } from './features/new-job.ts';
import { pastePoints } from './features/paste-points.ts';
import { plan } from './features/plan.ts';
import { references } from './features/references.ts';
import { rename } from './features/rename.ts';
import { search } from './features/search.ts';
import { selection } from './features/selection.ts';
import type { ReadInFolder } from './folder-files.ts';
import type { History } from './history.ts';
import type { StartOptions } from './protocol.ts';
import { Workspace } from './workspace.ts';

const FEATURES: readonly Feature[] = [
  codeActions,
  colours,
  comparison,
  completion,
  contents,
  definition,
  drag,
  folding,
  format,
  highlights,
  hints,
  hover,
  jobContents,
  lenses,
  links,
  movedFiles,
  newJob,
  pastePoints,
  plan,
  references,
  rename,
  search,
  selection
];

export function setUp(connection: Connection, read: ReadInFolder, history?: History): Workspace {
  const workspace = new Workspace(connection, read, history);
  connection.onInitialize(({ workspaceFolders, capabilities, initializationOptions }) => {
    if ((initializationOptions as StartOptions | undefined)?.trusted === true) workspace.comparisons.trust();
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
