// The figures that the editor shows all along: a person may switch them off.
import * as vscode from 'vscode';
import { CodeLensRequest, InlayHintRequest, type BaseLanguageClient, type Middleware } from 'vscode-languageclient';

const lensesSetting = 'figuresAboveAreas';
const hintsSetting = 'computedHints';

export const figuresMiddleware: Required<Pick<Middleware, 'provideCodeLenses' | 'provideInlayHints'>> = {
  provideCodeLenses: (document, token, next) => (isOn(lensesSetting, document) ? next(document, token) : []),
  provideInlayHints: (document, range, token, next) =>
    isOn(hintsSetting, document) ? next(document, range, token) : []
};

function isOn(setting: string, document: vscode.TextDocument): boolean {
  return vscode.workspace.getConfiguration('paving', document.uri).get(setting, true);
}

/** Shows and hides the figures as soon as a setting changes. */
export function followSettings(client: BaseLanguageClient): vscode.Disposable {
  return vscode.workspace.onDidChangeConfiguration(change => {
    for (const document of vscode.workspace.textDocuments) {
      const lenses = client.getFeature(CodeLensRequest.method).getProvider(document);
      if (change.affectsConfiguration(`paving.${lensesSetting}`, document.uri))
        lenses?.onDidChangeCodeLensEmitter.fire();
      const hints = client.getFeature(InlayHintRequest.method).getProvider(document);
      if (change.affectsConfiguration(`paving.${hintsSetting}`, document.uri)) hints?.onDidChangeInlayHints.fire();
    }
  });
}
