/// <reference lib="webworker" />
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser.js';
import { readFileRequest, type ReadFileResult } from './protocol.ts';
import { setUp } from './set-up.ts';

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self));

// A worker reads no files: the editor does it.
setUp(connection, (uri, folder) => connection.sendRequest<ReadFileResult>(readFileRequest, { uri, folder }));
