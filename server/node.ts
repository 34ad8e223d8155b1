import { URI } from 'vscode-uri';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import type { ReadResult } from '../language/project.ts';
import { GitHistory } from './git/git-history.ts';
import { NodeFiles } from './node-files.ts';
import { readFileRequest, type ReadFileResult } from './protocol.ts';
import { setUp } from './set-up.ts';

const connection = createConnection(ProposedFeatures.all);

function read(uri: string, folder: string): Promise<ReadResult> {
  const file = URI.parse(uri);
  // A folder that is not on this machine's disk is read by the editor.
  if (file.scheme !== 'file') return connection.sendRequest<ReadFileResult>(readFileRequest, { uri, folder });
  const root = URI.parse(folder).fsPath;
  return new NodeFiles({ root, shownFrom: root }).read(file.fsPath);
}

setUp(connection, read, new GitHistory());
