import type { Compared } from '../../language/comparing/compare.ts';
import { svgTree } from '../../language/drawing/svg/svg.ts';
import type { Place } from '../../language/findings/finding.ts';
import { errorOfText } from '../../language/job-figures.ts';
import { comparisonSheet } from '../../language/views/comparison/comparison-sheet.ts';
import { errorWords } from '../../language/views/job-lenses.ts';
import { overlayDrawing } from '../../language/views/plan/overlay/overlay-drawing.ts';
import type { PlanInput } from '../../language/views/plan/plan-input.ts';
import { planOfJob } from '../../language/views/plan/plan-of-job.ts';
import type { ComparedPair } from '../comparisons.ts';
import { rangeOf, shippedLocation, type Result } from '../diagnostics.ts';
import { aboutNewestText, abandoned, type Feature } from '../feature.ts';
import { FolderFiles } from '../folder-files.ts';
import { isProblem } from '../history.ts';
import { locationOf } from '../locations.ts';
import { olderAddress, olderSpecAt } from '../older-address.ts';
import {
  compareRequest,
  lookAgainNotification,
  olderTextRequest,
  revisionsRequest,
  trustedNotification,
  type CompareParams,
  type CompareResult,
  type OlderTextParams,
  type OlderTextResult,
  type RevisionsParams,
  type RevisionsResult,
  type ShownComparison,
  type ShownRow,
  type TextLocation
} from '../protocol.ts';
import type { Workspace } from '../workspace.ts';

/** What differs from an older text of a job: revisions to choose from, the comparison, and the older texts. */
export const comparison: Feature = {
  capabilities: {},
  register(workspace) {
    const { connection, comparisons } = workspace;
    connection.onNotification(trustedNotification, () => comparisons.trust());
    connection.onNotification(lookAgainNotification, () => void comparisons.lookAgain());
    connection.onRequest(
      revisionsRequest,
      aboutNewestText(async ({ textDocument }: RevisionsParams, token): Promise<RevisionsResult> => {
        const revisions = await comparisons.revisions(textDocument.uri, token);
        return isProblem(revisions) ? revisions : { revisions };
      })
    );
    connection.onRequest(
      compareRequest,
      aboutNewestText(async ({ textDocument, against }: CompareParams, token): Promise<CompareResult> => {
        const result = await workspace.settled(textDocument.uri, token);
        if (result?.evaluation.job === undefined) return { problem: NO_JOB };
        const pair = await comparisons.with(result, against, token);
        if (pair === undefined) throw abandoned();
        return isProblem(pair) ? pair : shown(workspace, result, pair, against);
      })
    );
    connection.onRequest(olderTextRequest, async ({ uri }: OlderTextParams): Promise<OlderTextResult> => {
      const spec = olderSpecAt(uri);
      const text = spec === undefined ? { problem: `There is no text at ${uri}.` } : await comparisons.olderText(spec);
      return typeof text === 'string' ? { text } : text;
    });
  }
};

const NO_JOB = 'There is no job in this file. Open the file that has it, and compare there.';

function shown(
  workspace: Workspace,
  result: Result,
  pair: ComparedPair,
  against: CompareParams['against']
): ShownComparison {
  const { newer, older, texts, comparison: compared } = pair;
  const job = newer.evaluation.job!;
  const own = result.files.show(result.evaluation.file);
  const before = 'revision' in against ? against.revision : older.evaluation.texts[0]!.file;
  const between = `${before} to ${'revision' in against ? 'the working copy' : own}`;
  const of = { title: job.title, between, system: job.system };
  const sheet = comparisonSheet({ ...of, comparison: compared, ...(job.datum && { datum: job.datum }) });
  const error = errorOfText(newer.evaluation.findings);
  return {
    ...sheet,
    sections: sheet.sections.map(section => ({
      ...section,
      rows: section.rows.map((row): ShownRow => {
        const { before: old, after: now } = row.places;
        const places = {
          ...(old && { before: olderLocation(workspace, texts, before, old) }),
          ...(now && { after: locationOf(workspace, result.files, now) })
        };
        return { ...row, places };
      })
    })),
    ...(sheet.sections.length === 0 ? {} : { drawing: svgTree(overlayDrawing(planOf(older), planOf(newer), of)) }),
    ...(error === undefined ? {} : { broken: errorWords({ error }, own) })
  };
}

function planOf({ evaluation: { job, numbers } }: Compared): PlanInput | undefined {
  return job && numbers && planOfJob(job, numbers);
}

/** A place in the older text: at a commit, in a file of today, or in what ships. */
function olderLocation(
  workspace: Workspace,
  texts: ComparedPair['texts'],
  revision: string,
  place: Place
): TextLocation {
  if (texts instanceof FolderFiles) return locationOf(workspace, texts, place);
  const shipped = shippedLocation(place);
  return shipped ?? { uri: olderAddress({ ...texts, path: place.file }, revision), range: rangeOf(place) };
}
