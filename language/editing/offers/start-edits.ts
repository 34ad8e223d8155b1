import type { TextChange } from '../../findings/finding.ts';
import { written, type Gaps } from '../../findings/gap.ts';
import type { Key, System } from '../../job/job.ts';
import type { StartChange } from '../../laying/starts/start-change.ts';
import type { SpecText } from '../../lowering/names.ts';
import { Placer } from '../../lowering/placer.ts';
import type { ParsedText } from '../../syntax/parse.ts';
import { spanOf, type Statement } from '../../syntax/statement-tree.ts';
import { takenOut } from '../../syntax/text-edit.ts';
import { jointClause, startClauses } from '../../views/start-words.ts';
import { onOneLine } from '../rewrites/written.ts';

/** Words that a clause of `start` begins with. */
const CLAUSES: ReadonlySet<string> = new Set(['whole', 'along', 'equal', 'from', 'shifted', 'turned', 'carried']);

/** An area as it stands in a text. */
export interface AreaInText {
  readonly text: SpecText;
  readonly key: Key;
  readonly statement: Statement;
  /** Where what it does not say could be written. */
  readonly gaps: Gaps;
}

/** The change as it is written; undefined where that can't be done without losing something. */
export function startEdits(area: AreaInText, change: StartChange, system: System): TextChange[] | undefined {
  const start = startEdit(area, change, system);
  const joint = change.joint === undefined ? [] : jointEdit(area, jointClause(change.joint, system));
  return start === undefined || joint === undefined ? undefined : [...start, ...joint];
}

function startEdit(area: AreaInText, change: StartChange, system: System): TextChange[] | undefined {
  const added = startClauses(change, system);
  if (added.length === 0 && change.shifted === undefined) return [];
  const { text, key, statement, gaps } = area;
  const said = statement.inside.filter(({ word }) => word === 'start');
  const [start] = said;
  if (start === undefined) {
    const gap = gaps.get(`${key}/start`);
    return gap && [written(gap, [`start ${added.join(', ')}`])];
  }
  const clauses = said.length > 1 ? undefined : clausesOf(text.parsed, start);
  if (clauses === undefined) return undefined;
  const kept = clauses.filter(({ word }) => word !== 'shifted' || change.shifted === undefined);
  const all = [...kept.map(clause => clause.written), ...added];
  const placer = Placer.of(text);
  const whole = spanOf(text.parsed, start.first, start.end);
  if (all.length === 0) return [placer.change(takenOut(text.parsed.text, whole.start, whole.end))];
  const span = spanOf(text.parsed, start.first + 1, start.end);
  return [placer.change({ ...span, text: all.join(', ') })];
}

interface Clause {
  readonly word: string;
  readonly written: string;
}

/** The clauses of a start as written; undefined where a comment stands among them, or there is none. */
function clausesOf(parsed: ParsedText, { first, end }: Statement): Clause[] | undefined {
  const { tokens } = parsed;
  const begins: number[] = [];
  for (let at = first + 1; at < end; at++) {
    const isFirst = at === first + 1 || tokens[at - 1]!.image === ',';
    if (isFirst && CLAUSES.has(tokens[at]!.tokenType.name)) begins.push(at);
  }
  if (begins[0] !== first + 1) return undefined;
  const clauses = begins.map((begin, index) => {
    const next = begins[index + 1];
    // Without the comma that parts it from the next.
    const words = onOneLine(parsed, spanOf(parsed, begin, next === undefined ? end : next - 1));
    return words === undefined ? undefined : { word: tokens[begin]!.tokenType.name, written: words };
  });
  return clauses.includes(undefined) ? undefined : (clauses as Clause[]);
}

/** The width of the joints in the paving of an area that says it itself. */
function jointEdit({ text, statement }: AreaInText, clause: string): TextChange[] | undefined {
  const [paving, another] = statement.inside.filter(({ word }) => word === 'paving');
  if (paving === undefined || another !== undefined) return undefined;
  const { tokens } = text.parsed;
  const find = (word: string): number => {
    const at = tokens.slice(paving.first, paving.end).findIndex(({ tokenType }) => tokenType.name === word);
    return at < 0 ? paving.end : paving.first + at;
  };
  if (find('as') < paving.end) return undefined;
  const placer = Placer.of(text);
  const joints = find('joints');
  if (joints === paving.end) {
    const { end } = spanOf(text.parsed, paving.first, paving.end);
    return [placer.change({ start: end, end, text: `, ${clause}` })];
  }
  const from = tokens.slice(joints, paving.end).findIndex(({ tokenType }) => tokenType.name === 'from');
  return [placer.change({ ...spanOf(text.parsed, joints, from < 0 ? paving.end : joints + from), text: clause })];
}
