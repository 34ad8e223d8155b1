import type { Country, Role } from '../../job/job.ts';
import { rulesAndSystem } from '../../lowering/job-words.ts';
import type { SpecText } from '../../lowering/names.ts';
import { occurrencesIn, type Occurrence } from '../../lowering/occurrences.ts';
import { standardMaterial } from '../../lowering/things-at-hand.ts';
import type { Look } from '../../paving.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { spanOf, type Statement } from '../../syntax/statement-tree.ts';
import { lineBreakOf, type Span } from '../../syntax/text-edit.ts';
import { materialsIn, type DeclaredMaterial } from './materials.ts';
import { isBroken, linesBefore, topStatementAt } from './places.ts';
import { covers, rewrite, type Edit, type Rewrite } from './rewrite.ts';

/** A declaration of a material that ships, or that is nowhere declared, to put the supplier's own figures in. */
export function declareMaterial({ text, project }: Look, at: Span): Rewrite[] {
  const { parsed } = text;
  const here = occurrencesIn(text, project).find(
    occurrence => occurrence.kinds.includes('material') && covers(occurrence, at)
  );
  const statement = here && topStatementAt(parsed, here.start);
  if (here === undefined || statement === undefined || isBroken(parsed, statement)) return [];
  const isShipped = here.declared?.text === project.shipped;
  if (here.declared !== undefined && !isShipped) return [];
  const shipped = materialsIn(project.shipped);
  const like = isShipped
    ? shipped.find(({ name }) => name === here.name)
    : standardOf(shipped, roleAt(parsed, statement, here), rulesAndSystem(project).country);
  if (like === undefined) return [];
  const title = isShipped
    ? `Declare ${here.name} here, to put in your supplier's figures`
    : `Declare ${here.name} here, with the figures of ${like.name} to begin with`;
  const declaration = declarationLike(project.shipped.parsed, like, here.name);
  const keeps = isShipped ? { within: 0 } : { mends: 'unknown-name' };
  return [rewrite(text, { title, kind: 'rewrite', keeps }, [withOthers(text, statement, declaration)])];
}

/** What a material is wanted for where its name stands. */
function roleAt({ tokens }: ParsedText, area: Statement, { start }: Occurrence): Role | undefined {
  const index = tokens.findIndex(({ startOffset }) => startOffset === start);
  if (tokens[index - 1]?.tokenType.name === 'edging') return 'edging';
  const word = area.inside.find(({ first, end }) => first <= index && index < end)?.word;
  return word === undefined ? undefined : ROLES[word];
}

const ROLES: Readonly<Record<string, Role>> = {
  bed: 'bed',
  base: 'base',
  'sub-base': 'sub-base',
  geotextile: 'geotextile',
  joints: 'joint-filler'
};

function standardOf(
  shipped: readonly DeclaredMaterial[],
  role: Role | undefined,
  country: Country
): DeclaredMaterial | undefined {
  if (role === undefined) return undefined;
  const fitting = shipped.filter(({ roles }) => roles.includes(role));
  const usual = standardMaterial(role, country);
  return fitting.find(({ name }) => name === usual) ?? fitting[0];
}

/** As it ships, under another name, with a note that says what to do. */
function declarationLike(shipped: ParsedText, { statement, name: like }: DeclaredMaterial, name: string): string[] {
  const { start, end } = spanOf(shipped, statement.open!, statement.end);
  const [brace, ...lines] = shipped.text.slice(start, end).split('\n');
  return [
    `// Figures of ${like} as it ships: put your supplier's in their place.`,
    `material ${name} ${brace!}`,
    ...lines
  ];
}

/** After the last material of the file, else before what it is wanted in. */
function withOthers(text: SpecText, wanted: Statement, lines: readonly string[]): Edit {
  const { parsed } = text;
  const last = materialsIn(text).at(-1)?.statement;
  if (last === undefined) return linesBefore(text, wanted, lines);
  const lineEnd = lineBreakOf(parsed.text);
  const { end } = spanOf(parsed, last.first, last.end);
  const nextLine = parsed.text.indexOf('\n', end);
  const start = nextLine < 0 ? parsed.text.length : nextLine + 1;
  const written = [...(nextLine < 0 ? [''] : []), '', ...lines].join(lineEnd);
  return { start, end: start, text: written + lineEnd };
}
