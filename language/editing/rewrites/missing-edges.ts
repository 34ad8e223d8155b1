import type { Area, Edge, Job } from '../../job/job.ts';
import { sidesInWords } from '../../findings/sides.ts';
import type { Evaluation, Look } from '../../paving.ts';
import { neighbourStage, TOUCHING } from '../../quantities/neighbour-stage.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import type { Statement } from '../../syntax/statement-tree.ts';
import { materialsIn } from './materials.ts';
import { isBroken, lineEndOf, spanOf, topStatementAt } from './places.ts';
import { rewrite, type Edit, type Rewrite, type Span } from './rewrite.ts';

interface EdgeLine {
  readonly head: string;
  readonly meets: string;
}

/** What the sides of an area meet of which nothing is said: another area where one lies along them, else one of the usual two. */
export function addMissingEdges(look: Look, at: Span, evaluation: Evaluation | undefined): Rewrite[] {
  const { text } = look;
  const statement = topStatementAt(text.parsed, at.start);
  const job = evaluation?.job;
  if (job === undefined || statement?.word !== 'area' || isBroken(text.parsed, statement)) return [];
  const name = text.parsed.tokens[statement.first + 1]?.image ?? '';
  const area = job.areas.find(each => each.name === name);
  if (area === undefined || evaluation!.places.get(area.key)?.file !== text.file) return [];
  const unsaid = area.edges.filter(({ meets }) => meets === undefined);
  if (unsaid.length === 0) return [];
  const along = linesAlongAreas(job, area, unsaid);
  const rest = unsaid.filter(edge => !along.some(({ head }) => head === edge.name));
  if (rest.length === 0)
    return [
      made(
        look,
        statement,
        along,
        `Say that ${sidesInWords(unsaid)} ${verb(unsaid)} ${along.map(({ meets }) => meets).join(' and ')}`
      )
    ];
  const edging = usualEdging(job, look);
  const head = new Set(rest.map(edge => edge.name)).size > 1 ? 'the rest' : rest[0]!.name;
  const choices: readonly [string, string][] = [
    [`lawn, edging ${edging}`, `lawn, with ${edging}`],
    ['house-wall', 'house-wall']
  ];
  return choices.map(([meets, words]) =>
    made(look, statement, [...along, { head, meets }], `Say that ${sidesInWords(rest)} ${verb(rest)} ${words}`)
  );
}

function verb(edges: readonly Edge[]): string {
  return new Set(edges.map(({ name }) => name)).size > 1 ? 'meet' : 'meets';
}

function made({ text }: Look, statement: Statement, lines: readonly EdgeLine[], title: string): Rewrite {
  const edits = edgesWith(text.parsed, statement, lines);
  return rewrite(text, { title, kind: 'rewrite', keeps: { mends: 'edge-not-said' } }, edits);
}

// ---- what they meet ----

/** Sides that lie along another area from end to end. */
function linesAlongAreas(job: Job, area: Area, unsaid: readonly Edge[]): EdgeLine[] {
  const lines = new Map<string, string>();
  for (const other of job.areas) {
    if (other.key === area.key) continue;
    const { first: sides } = neighbourStage({ first: bordersOf(area), second: bordersOf(other) });
    for (const edge of unsaid) {
      // A rounded side has several parts: all of them would have to lie along it.
      const parts = area.edges.flatMap(({ name }, index) => (name === edge.name ? [sides[index]] : []));
      const isAlong = parts.every(side => side !== undefined && side.length - side.along <= TOUCHING);
      if (isAlong && !lines.has(edge.name)) lines.set(edge.name, other.name);
    }
  }
  return [...lines].map(([head, meets]) => ({ head, meets }));
}

function bordersOf({ outline, keptOut }: Area) {
  return { outline, keptOut: keptOut.map(kept => kept.outline) };
}

/** The edging that the job uses already, or has declared, else the one that ships. */
function usualEdging(job: Job, { project }: Look): string {
  const used = job.areas.flatMap(({ edges }) => edges.flatMap(({ edging }) => edging?.name ?? []));
  const declared = [...project.texts, project.shipped].flatMap(text =>
    materialsIn(text).filter(({ roles }) => roles.includes('edging'))
  );
  return used.at(-1) ?? declared[0]!.name;
}

// ---- where they are written ----

function edgesWith(parsed: ParsedText, area: Statement, lines: readonly EdgeLine[]): Edit[] {
  const { tokens } = parsed;
  const block = area.inside.find(({ word, open }) => word === 'edges' && open !== undefined);
  const indent = ' '.repeat((tokens[area.inside[0]!.first]!.startColumn ?? 3) - 1);
  const within = block ?? area;
  const before = block?.inside.map(line => headWidth(parsed, line)) ?? [];
  const width = Math.max(...before, ...lines.map(({ head }) => head.length));
  const inner = lines.map(({ head, meets }) => `${indent}  ${head.padEnd(width)}  meets ${meets}`);
  const added = block === undefined ? [`${indent}edges {`, ...inner, `${indent}}`] : inner;
  return beforeBrace(parsed, within, added, block === undefined ? '' : indent);
}

function headWidth(parsed: ParsedText, { first, end }: Statement): number {
  let meets = first;
  while (meets < end && parsed.tokens[meets]!.tokenType.name !== 'meets') meets++;
  const { start, end: last } = spanOf(parsed, first, Math.max(meets, first + 1));
  return last - start;
}

/** Lines of their own before the } of a block; of one that stands on one line the braces move apart. */
function beforeBrace(
  parsed: ParsedText,
  { open, close, inside }: Statement,
  lines: readonly string[],
  indent: string
): Edit[] {
  const { tokens, text } = parsed;
  const lineEnd = lineEndOf(parsed);
  const brace = tokens[close!]!.startOffset;
  const lineStart = text.lastIndexOf('\n', brace - 1) + 1;
  const written = lines.map(line => line + lineEnd).join('');
  if (text.slice(lineStart, brace).trim() === '') return [{ start: lineStart, end: lineStart, text: written }];
  const lastEnd = tokens[close! - 1]!.endOffset! + 1;
  const edits: Edit[] = [{ start: lastEnd, end: brace, text: `${lineEnd}${written}${indent}` }];
  const first = inside[0];
  if (first === undefined || tokens[first.first]!.startLine !== tokens[open!]!.startLine) return edits;
  return [
    { start: tokens[open!]!.endOffset! + 1, end: tokens[first.first]!.startOffset, text: `${lineEnd}${indent}  ` },
    ...edits
  ];
}
