import type { CodeLens } from 'vscode-languageserver';
import { lensesIn } from '../../language/views/lenses.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';

/** The headline figures above the job and its areas: what there is, what it costs, how long it takes. */
export const lenses: Feature = {
  capabilities: { codeLensProvider: {} },
  register(workspace) {
    workspace.connection.onCodeLens(
      aboutNewestText(async ({ textDocument }, token): Promise<CodeLens[]> => {
        const result = await workspace.settled(textDocument.uri, token);
        if (result === undefined) return [];
        const figures = await workspace.figuresOf(result, token);
        const file = result.files.show(sameAddress(textDocument.uri));
        return lensesIn(result.evaluation, file, figures).map(({ place, text }) => ({
          range: rangeOf(place),
          command: { title: text, command: '' }
        }));
      })
    );
  }
};
