// Completion at any place of any text: it never fails, touches nothing but the word at the cursor, and what it offers is
// read there as what it claims to be.
import { CONCERNS, membersOf } from '../../language/findings/members/members.ts';
import { namesOf, type SpecText } from '../../language/lowering/names.ts';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { completionsAt, type Completion } from '../../language/editing/completion/completion.ts';
import { occurrencesInExamples, worldAt } from '../../language/lowering/examples.ts';
import { occurrencesIn } from '../../language/lowering/occurrences.ts';
import { Paving, type Look } from '../../language/paving.ts';
import { inMemory } from './in-memory.ts';
import { seeded } from './seeded.ts';

const root = path.resolve(import.meta.dirname, '../..');
const textsIn = (folder: string): string[] =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.paving'))
    .sort()
    .map(name => readFileSync(path.join(root, folder, name), 'utf8'));

const RULE_TEXTS = textsIn('language/library').filter(text => /^(?:rule|source|rulebook) /m.test(text));

const paving = new Paving(inMemory({}));
function look(text: string): Look {
  paving.setText('job.paving', text);
  return paving.look('job.paving')!;
}

/** Offsets of what a completion replaces. */
function replaced({ place }: Completion, text: string): { start: number; end: number } {
  const lineStart =
    text
      .split('\n')
      .slice(0, place.line - 1)
      .join('\n').length + (place.line > 1 ? 1 : 0);
  return { start: lineStart + place.column - 1, end: lineStart + place.endColumn - 1 };
}

/** What is wrong with what is said of a completion, and with where it goes. */
function misplaced(completion: Completion, text: string, offset: number): string | undefined {
  const { start, end } = replaced(completion, text);
  const old = text.slice(start, end);
  if (!/^\S.{3,80}$/.test(completion.detail)) return `${completion.kind} ${completion.label} has no line of help`;
  if (completion.place.line !== completion.place.endLine || start > offset || end < offset) return 'not at the cursor';
  if (completion.kind === 'file') return /["\n]/.test(old) ? 'replaces more than the path' : undefined;
  return /^\s*[\p{L}\p{M}\p{N}_-]*$/u.test(old) ? undefined : `replaces ${JSON.stringify(old)}`;
}

/** The text up to the end of what is put in, the rest of its line left out. */
function withCompletion(completion: Completion, text: string): { text: string; at: number } {
  const { start, end } = replaced(completion, text);
  const lineEnd = text.indexOf('\n', end);
  const before = text.slice(0, start);
  const space = /^[\s,]*(?:= )?/.exec(completion.text)![0].length;
  return { text: before + completion.text + (lineEnd < 0 ? '' : text.slice(lineEnd)), at: start + space };
}

/** What the text says of a completion, where that is not what it claims to be. */
function misread(completion: Completion, text: string): string | undefined {
  const put = withCompletion(completion, text);
  const told = misreadIn(completion, put);
  if (told === undefined || completion.kind !== 'name') return told;
  // A name may need what follows it: the height behind a corner.
  const whole =
    text.slice(0, replaced(completion, text).start) + completion.text + text.slice(replaced(completion, text).end);
  return misreadIn(completion, { text: whole, at: put.at });
}

function misreadIn({ kind, label }: Completion, put: { text: string; at: number }): string | undefined {
  const { text: spec, project } = look(put.text);
  const { tokens, statements } = spec.parsed;
  const at = tokens.findIndex(({ startOffset, image }) => startOffset === put.at && image !== '');
  const token = tokens[at];
  const type = token?.tokenType.name ?? 'nothing';
  const isStart = statements.some(statement => statement.token === at);
  const is = ((): boolean => {
    switch (kind) {
      case 'job':
      case 'statement':
        // A line of the log begins with its day.
        if (type === 'DATE') return isStart && tokens[at + 1]?.tokenType.name === label;
        return isStart && type === token?.image && (kind === 'job' || type === label);
      case 'side':
        return isStart || (/^(?:ID|leg|left|right)$/.test(type) && label.split(' ')[0] === token?.image);
      case 'clause':
        return type === token?.image || /^(?:NUMBER|BY)$/.test(type);
      case 'choice':
        // A further one of a list brings its comma.
        // The ways of a walk are words of the statement too, and a task of one's own is named by its title.
        return /^(?:ID|NUMBER|STRING|left|right)$/.test(type) && token?.image === label.replace(/^, /, '');
      case 'measure':
        return type === 'MEASURE';
      case 'quantity':
        return /^(?:NUMBER|\()$/.test(type);
      case 'block':
        return /^(?:\{|STRING)$/.test(type);
      case 'file':
        return tokens.some(({ tokenType, image }) => tokenType.name === 'STRING' && image.includes(label));
      case 'name': {
        const world = worldAt({ text: spec, project }, put.at);
        return occurrencesIn(world.text, world.project).some(
          ({ start, name, declared }) => start === put.at && name === label && declared?.name === label
        );
      }
    }
  })();
  return is ? undefined : `${kind} ${label} reads as ${type}`;
}

/** Looks at some places of a text and tells what is wrong there, with the place drawn. */
function wrongIn(text: string, places: number, reads: number, below: (limit: number) => number): string[] {
  const wrong: string[] = [];
  for (let place = 0; place < places; place++) {
    const offset = below(text.length + 1);
    const at = look(text);
    const offered = completionsAt(at.text, at.project, offset, ['other.paving']);
    const told = offered.flatMap(completion => misplaced(completion, text, offset) ?? []);
    for (let read = 0; read < reads && offered.length > 0; read++)
      told.push(...[misread(offered[below(offered.length)]!, text)].flatMap(each => each ?? []));
    wrong.push(...told.map(each => `${each} at ${drawn(text, offset)}`));
  }
  return [...new Set(wrong)];
}

function drawn(text: string, offset: number): string {
  return JSON.stringify(`${text.slice(Math.max(0, offset - 60), offset)}‸${text.slice(offset, offset + 20)}`);
}

/** Words of a text that are not offered where they stand; names of new things and colours are free. */
function notOffered(text: string): string[] {
  const { text: spec, project } = look(text);
  const names = [...occurrencesIn(spec, project), ...occurrencesInExamples(spec, project, { start: 0, end: Infinity })];
  const known = new Set([
    ...[project.shipped, ...project.rulebooks, spec].flatMap(each => namesOf(each).all.map(({ name }) => name)),
    ...CONCERNS.flatMap(concern => membersOf(concern).flatMap(({ choices = [] }) => choices))
  ]);
  return spec.parsed.tokens.flatMap(({ tokenType, image, startOffset }, at) => {
    const isWord = /^[a-z]/i.test(image) && tokenType.name !== 'BY' && spec.parsed.tokens[at - 1]?.image !== 'colour';
    const name = names.find(({ start }) => start === startOffset);
    if (!isWord || name?.isDeclaration || (name !== undefined && name.declared === undefined)) return [];
    // A rule may speak of what someone else will declare, such as a soil of their own.
    if (isAfterIs(spec.parsed.tokens, at) && !known.has(image)) return [];
    const offered = completionsAt(spec, project, startOffset);
    const isOffered = offered.some(({ label }) => label.split(' ').includes(image) || label === image);
    return isOffered ? [] : [`${image} at ${drawn(text, startOffset)}`];
  });
}

/** Behind `is`, or further on in its list. */
function isAfterIs(tokens: SpecText['parsed']['tokens'], at: number): boolean {
  const before = tokens.slice(0, at).findLastIndex(({ tokenType }) => !['ID', ',', 'not'].includes(tokenType.name));
  return tokens[before]?.tokenType.name === 'is';
}

describe('Anywhere', () => {
  test('in the samples', () => {
    const below = seeded(7);
    expect(textsIn('samples').flatMap(text => wrongIn(text, 120, 2, below))).toEqual([]);
  });

  test('every word of the samples is offered where it stands', () => {
    const alone = textsIn('samples').filter(text => !text.includes('\nuse '));
    expect(alone.flatMap(notOffered)).toEqual([]);
  });

  test('in the rules that ship', { timeout: 600_000 }, () => {
    const below = seeded(10);
    expect(RULE_TEXTS.flatMap(text => wrongIn(text, 200, 2, below))).toEqual([]);
  });

  test('every word of the rules that ship is offered where it stands', () => {
    expect(RULE_TEXTS.length).toBeGreaterThan(3);
    expect(RULE_TEXTS.flatMap(notOffered)).toEqual([]);
  });

  test('in faulty specs', () => {
    const below = seeded(8);
    const texts = textsIn('tests/faulty').filter(text => text.length < 20_000);
    expect(texts.flatMap(text => wrongIn(text, 12, 2, below))).toEqual([]);
  });

  test('in texts that break off anywhere', () => {
    const below = seeded(9);
    const texts = textsIn('samples').flatMap(text =>
      Array.from({ length: 40 }, () => text.slice(0, below(text.length)))
    );
    expect(
      texts.flatMap(text => {
        const at = look(text);
        const offered = completionsAt(at.text, at.project, text.length);
        return offered.slice(0, 4).flatMap(each => {
          const wrong = misplaced(each, text, text.length) ?? misread(each, text);
          return wrong === undefined ? [] : `${wrong} at ${drawn(text, text.length)}`;
        });
      })
    ).toEqual([]);
  });
});
