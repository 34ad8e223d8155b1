import type { Carting, Country, Given } from '../job/job.ts';
import type * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import type { Context, Wanted } from './context.ts';
import type { SpecText } from './names.ts';
import type { Usuals } from './usuals.ts';

/** What the job says of how what is dug is carried away: by whom it is dug, the way in, what a barrow and a truck take. */
export function readCarting(
  context: Context,
  text: SpecText,
  said: ReadonlyMap<string, ast.JobItem>,
  usuals: Usuals,
  country: Country | undefined
): Carting {
  const dig = said.get('JobDig') as ast.JobDig | undefined;
  const access = said.get('JobAccess') as ast.JobAccess | undefined;
  if (dig !== undefined) context.place('job/dig', text, dig);
  if (access !== undefined) context.place('job/access', text, access);
  const given = (key: string, node: ast.Sum | undefined, wanted: Wanted): Given | undefined =>
    node && context.given(text, key, node as Expression, wanted);
  const load = (what: 'barrow-load' | 'truck-load', wanted: Wanted): Given | undefined =>
    given(`job/${what}`, (said.get(what) as ast.JobMeasure | undefined)?.value, wanted);
  const machine = given('job/dig/machine', dig?.machine, 'kg');
  const width = given('job/access/width', access?.width, 'm');
  const run = given('job/access/run', access?.run, 'm');
  const truck = load('truck-load', 'kg');
  return {
    ...(dig?.way === undefined ? {} : { digBy: dig.way }),
    ...(machine === undefined ? {} : { machine }),
    ...(width === undefined ? {} : { width }),
    ...(run === undefined ? {} : { run }),
    barrow: load('barrow-load', 'm3') ?? usuals.of('barrow', country)!,
    ...(truck === undefined ? {} : { truck })
  };
}

/** Printed as they are; an empty one says nothing. */
export function readNotes(context: Context, text: SpecText, notes: readonly ast.JobNote[]): string[] {
  return notes.flatMap((item, index) => {
    context.place(`job/note-${index + 1}`, text, item);
    const note = item.note?.trim() ?? '';
    return note === '' ? [] : [note];
  });
}
