import type { CancellationToken } from 'vscode-languageserver';
import { svgTree } from '../../language/drawing/svg/svg.ts';
import { keysAt } from '../../language/editing/keys-at.ts';
import type { Point } from '../../language/geometry/index.ts';
import type { Job } from '../../language/job/job.ts';
import { printLength } from '../../language/measures/print.ts';
import type { JobNumbers } from '../../language/quantities/contract.ts';
import { nearest } from '../../language/views/live-plan/finding-signs.ts';
import { placeOfThing } from '../../language/views/live-plan/place-of-thing.ts';
import type { SectionInput } from '../../language/views/section/section-input.ts';
import { sectionAlong } from '../../language/views/section/section-of-job.ts';
import { sectionDrawing } from '../../language/views/section/section-drawing.ts';
import { sectionText } from '../../language/views/section/section-text.ts';
import type { Colours } from '../../language/views/text/colours.ts';
import type { Result } from '../diagnostics.ts';
import { aboutNewestText, abandoned, type Feature } from '../feature.ts';
import { sameAddress } from '../folder-files.ts';
import { NO_JOB } from '../live-plans.ts';
import { locationOf } from '../locations.ts';
import {
  placeOfThingRequest,
  planOwnerRequest,
  planRequest,
  sectionRequest,
  thingsAtRequest,
  type PlaceOfThingParams,
  type PlaceOfThingResult,
  type PlanOwnerParams,
  type PlanOwnerResult,
  type PlanParams,
  type PlanResult,
  type SectionLine,
  type SectionParams,
  type SectionResult,
  type ThingsAtParams,
  type ThingsAtResult
} from '../plan-protocol.ts';
import type { Workspace } from '../workspace.ts';

/** The live plan: drawn, its things led to the text and back, and sections along its lines. */
export const plan: Feature = {
  capabilities: {},
  register(workspace) {
    const { connection } = workspace;
    connection.onRequest(
      planRequest,
      aboutNewestText(({ textDocument, has }: PlanParams, token): Promise<PlanResult> =>
        workspace.livePlans.answer(textDocument.uri, has, token)
      )
    );
    connection.onRequest(
      planOwnerRequest,
      aboutNewestText(async ({ textDocument }: PlanOwnerParams, token): Promise<PlanOwnerResult> => {
        const result = await jobAt(workspace, textDocument.uri, token);
        return result === undefined ? {} : { uri: workspace.editorsAddress(result.evaluation.file) };
      })
    );
    connection.onRequest(
      placeOfThingRequest,
      aboutNewestText(async ({ textDocument, thing }: PlaceOfThingParams, token): Promise<PlaceOfThingResult> => {
        const result = await jobAt(workspace, textDocument.uri, token);
        if (result === undefined) return { place: null };
        const drawn = await workspace.livePlans.planOf(result, token);
        const place = placeOfThing(result.evaluation, drawn, thing);
        return { place: place === undefined ? null : locationOf(workspace, result.files, place) };
      })
    );
    connection.onRequest(
      thingsAtRequest,
      aboutNewestText((params: ThingsAtParams, token) => thingsAt(workspace, params, token))
    );
    connection.onRequest(
      sectionRequest,
      aboutNewestText(async ({ textDocument, along }: SectionParams, token): Promise<SectionResult> => {
        const result = await jobAt(workspace, textDocument.uri, token);
        const { job, numbers } = result?.evaluation ?? {};
        if (job === undefined || numbers === undefined) return { problem: NO_JOB };
        const cut = cutAlong(job, numbers, along);
        if ('problem' in cut) return cut;
        return { drawing: svgTree(sectionDrawing(cut)), text: sectionText(cut, PLAIN) };
      })
    );
  }
};

/** The job of a file as its newest text has it. */
async function jobAt(workspace: Workspace, uri: string, token: CancellationToken): Promise<Result | undefined> {
  const result = await workspace.settled(uri, token);
  if (token.isCancellationRequested) throw abandoned();
  return result?.evaluation.job === undefined ? undefined : result;
}

async function thingsAt(
  workspace: Workspace,
  { textDocument, uri, position }: ThingsAtParams,
  token: CancellationToken
): Promise<ThingsAtResult> {
  const result = await jobAt(workspace, textDocument.uri, token);
  const file = result?.evaluation.texts.find(text => result.files.uriOf(text.file) === sameAddress(uri))?.file;
  const document = workspace.documentOf(uri);
  const seen = await workspace.look(uri);
  if (result === undefined || file === undefined || seen === undefined || document === undefined) return { things: [] };
  const drawn = await workspace.livePlans.planOf(result, token);
  const known = new Set(drawn.things.map(({ key }) => key));
  const keys = keysAt(seen.text, file, result.evaluation.places, document.offsetAt(position));
  const things = keys.flatMap(key => nearest(key, at => known.has(at)) ?? []);
  return { things: [...new Set(things)] };
}

/** A line of the job by its key, or from one place to another. */
function cutAlong(job: Job, numbers: JobNumbers, along: SectionLine): SectionInput | { readonly problem: string } {
  if ('key' in along) {
    const line = [...job.sections, ...job.lines].find(({ key }) => key === along.key);
    if (line === undefined) return { problem: 'The job has no such line any more. Choose another.' };
    return (
      sectionAlong(job, numbers, line) ?? {
        problem: `The line ${line.name} has no length: nothing can be cut along it.`
      }
    );
  }
  const [from, to] = [along.from, along.to].map(([x, y]): Point => ({ x: x / 1000, y: y / 1000 })) as [Point, Point];
  if (![from.x, from.y, to.x, to.y].every(Number.isFinite)) return { problem: ONE_PLACE };
  const told = ({ x, y }: Point): string => `(${printLength(x, job.system)}, ${printLength(y, job.system)})`;
  const line = { name: `from ${told(from)} to ${told(to)}`, sides: [{ from, to }] };
  return sectionAlong(job, numbers, line) ?? { problem: ONE_PLACE };
}

const ONE_PLACE = 'A section leads from one place to another. Choose two that lie apart.';

const same = (text: string): string => text;

/** The panel shows the text as it is. */
const PLAIN: Colours = { strong: same, faint: same, error: same, warning: same, note: same };
