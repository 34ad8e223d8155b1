import type { CancellationToken, CodeLens } from 'vscode-languageserver';
import { errorOfText, type ShownFigures } from '../../language/job-figures.ts';
import { comparisonSummary } from '../../language/views/comparison/comparison-summary.ts';
import { errorWords } from '../../language/views/job-lenses.ts';
import { lensesIn } from '../../language/views/lenses.ts';
import { rangeOf, type Result } from '../diagnostics.ts';
import { aboutNewestText, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';
import { compareWithHeadCommand } from '../protocol.ts';
import type { Workspace } from '../workspace.ts';

/** The headline figures above the job and its areas: what there is, what it costs, how long it takes, what differs since HEAD. */
export const lenses: Feature = {
  capabilities: { codeLensProvider: {} },
  register(workspace) {
    const sinceHead = sinceHeadIn(workspace);
    workspace.connection.onCodeLens(
      aboutNewestText(async ({ textDocument }, token): Promise<CodeLens[]> => {
        const result = await workspace.settled(textDocument.uri, token);
        if (result === undefined) return [];
        const figures = await workspace.figuresOf(result, token);
        const file = result.files.show(sameAddress(textDocument.uri));
        const since = await sinceHead(result, file, token);
        return lensesIn(result.evaluation, file, figures, since).map(({ place, text, isOfComparison }) => ({
          range: rangeOf(place),
          command: isOfComparison
            ? { title: text, command: compareWithHeadCommand, arguments: [textDocument.uri] }
            : { title: text, command: '' }
        }));
      })
    );
  }
};

type SinceHead = (result: Result, file: string, token: CancellationToken) => Promise<string | undefined>;

/** What is told last of each open job stays, marked, while its text has errors. */
function sinceHeadIn(workspace: Workspace): SinceHead {
  const last = new Map<string, string>();
  return async (result, file, token) => {
    const { evaluation } = result;
    const broken = brokenBy(result);
    if (broken !== undefined) {
      const before = last.get(evaluation.file);
      return before && `before ${errorWords(broken, file)}: ${before}`;
    }
    const newer = await workspace.comparedOf(result, token);
    const comparison = newer && workspace.comparisons.sinceHead(newer);
    const summary = comparison && comparisonSummary(comparison, newer.evaluation.job!.system);
    for (const job of last.keys()) if (workspace.documentOf(job) === undefined) last.delete(job);
    if (summary === undefined) last.delete(evaluation.file);
    else last.set(evaluation.file, `since HEAD: ${summary}`);
    return last.get(evaluation.file);
  };
}

/** Its numbers are not those that the person means. */
function brokenBy({ evaluation: { findings, numbers } }: Result): ShownFigures['broken'] {
  const error = errorOfText(findings);
  if (error === undefined && numbers?.quantities.complete !== false) return undefined;
  return { isBefore: true, ...(error && { error }) };
}
