import type { InlayHint } from 'vscode-languageserver';
import { letHints } from '../../language/editing/let-hints.ts';
import { hintsIn } from '../../language/views/hints.ts';
import { rangeOf } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';
import { linesOf } from '../locations.ts';

/** Short computed values behind the statements that they follow from. */
export const hints: Feature = {
  capabilities: { inlayHintProvider: true },
  register(workspace) {
    workspace.connection.languages.inlayHint.on(
      aboutNewestText(async ({ textDocument, range }, token): Promise<InlayHint[]> => {
        const { uri } = textDocument;
        const result = await workspace.settled(uri, token);
        const seen = await workspace.look(uri);
        const system = result?.evaluation.job?.system;
        if (result === undefined || seen === undefined || system === undefined) return [];
        const within = linesOf(seen.text.parsed.text, range);
        return [...hintsIn(result.evaluation, result.files.show(sameAddress(uri))), ...letHints(seen, system, within)]
          .map(({ place, text, tooltip }) => ({
            position: rangeOf(place).end,
            label: text,
            tooltip,
            paddingLeft: true
          }))
          .filter(({ position: { line } }) => line >= range.start.line && line <= range.end.line);
      })
    );
  }
};
