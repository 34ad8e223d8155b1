import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';

const connection = createConnection(ProposedFeatures.all);
connection.onInitialize(() => ({ capabilities: {} }));
connection.listen();
