// Texts of a revision, opened from a comparison: to be read, not changed.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { answerTo } from './asking.ts';
import { olderScheme, olderTextRequest, type OlderTextParams, type OlderTextResult } from '../server/protocol.ts';

export function registerOlderTexts(client: BaseLanguageClient): vscode.Disposable {
  return vscode.workspace.registerTextDocumentContentProvider(olderScheme, {
    async provideTextDocumentContent(uri) {
      const params: OlderTextParams = { uri: uri.toString() };
      const answer = await answerTo<OlderTextResult>(client, olderTextRequest, params);
      if (answer !== undefined && 'text' in answer) return answer.text;
      throw vscode.FileSystemError.Unavailable(answer?.problem ?? uri);
    }
  });
}
