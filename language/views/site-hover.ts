import type { Job, Key } from '../job/job.ts';
import type { JobQuantities } from '../quantities/contract.ts';
import type { Owner } from '../quantities/catalogue.ts';
import type { Thing } from './hover.ts';
import { markdownText } from './markdown.ts';
import { printFine, printLength } from '../measures/print.ts';

type List = 'boxes' | 'gates' | 'drains' | 'pipes' | 'routes';

interface Listed {
  readonly list: List;
  readonly owner: Owner;
  /** The number whose working is shown. */
  readonly leading: string;
}

/** What stands in a job besides its areas, by the beginning of its key. */
const LISTED: Readonly<Record<string, Listed>> = {
  box: { list: 'boxes', owner: 'box', leading: 'change' },
  gate: { list: 'gates', owner: 'gate', leading: 'clearance' },
  drain: { list: 'drains', owner: 'drain', leading: 'drained' },
  pipe: { list: 'pipes', owner: 'pipe', leading: 'belowDig' },
  route: { list: 'routes', owner: 'route', leading: 'length' }
};

/** The thing at a key: a box, gate, drain, pipe or route with its numbers, a point with where it lies and its tapes. */
export function siteThingAt(quantities: JobQuantities, job: Job, key: Key): Thing | undefined {
  const [kind, name] = [key.split(':')[0]!, key.slice(key.indexOf(':') + 1).split('/')[0]!];
  if (kind === 'point') return pointAt(job, name);
  const listed = Object.hasOwn(LISTED, kind) ? LISTED[kind]! : undefined;
  if (listed === undefined) return undefined;
  const all: readonly { readonly id: Key; readonly name: string }[] = quantities[listed.list] ?? [];
  const index = all.findIndex(({ id }) => id === `${kind}:${name}`);
  if (index < 0) return undefined;
  const word = kind === 'gate' ? (quantities.gates?.[index]?.kind ?? kind) : kind;
  return {
    headline: `${word} ${name}`,
    owner: listed.owner,
    numbers: all[index]!,
    pointer: `/${listed.list}/${index}`,
    leading: listed.leading
  };
}

/** Where a point lies, and each tape to it: read, fitted, and what it would have to read. */
function pointAt({ points, tapes, system }: Job, name: string): Thing | undefined {
  const point = points.find(one => one.name === name);
  if (point === undefined) return undefined;
  const print = (length: number): string => printLength(length, system);
  const place = `| | |\n|:--|--:|\n| Right, x | ${print(point.x)} |\n| Up, y | ${print(point.y)} |`;
  const own = tapes.filter(({ from, to }) => from === name || to === name);
  const rows = own.map(({ from, to, read, fitted, misfit, byTheOthers }) =>
    [
      '',
      markdownText(`${from} to ${to}`),
      print(read.value),
      print(fitted),
      printFine(misfit, system),
      byTheOthers === undefined ? '' : print(byTheOthers),
      ''
    ].join(' | ')
  );
  const taped =
    rows.length === 0
      ? []
      : [
          [
            '| Tape | Read | Fitted | Misfit | By the others |',
            '|:--|--:|--:|--:|--:|',
            ...rows.map(row => row.trim())
          ].join('\n')
        ];
  return { headline: `point ${name}`, owner: 'tape', numbers: {}, pointer: '', tables: [place, ...taped] };
}
