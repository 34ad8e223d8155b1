// The guide to rules of one's own: its jobs are real, and find what it says.
import { describe, expect, test } from 'vitest';
import { CONCERNS, membersOf } from '../../language/findings/members/members.ts';
import { SOURCE_KINDS } from '../../language/lowering/sources.ts';
import { GUIDE, shippedPages } from '../../language/pages.ts';
import { BLOCKS } from '../../language/syntax/words.ts';
import { programmersWords } from '../faulty/plain-words.ts';
import { evaluated } from '../language/in-memory.ts';
import { folder, paving } from './run.ts';

const guide = shippedPages().get(GUIDE)!;
const files = Object.fromEntries(
  [...guide.matchAll(/^```paving (\S+)\n([^]*?)^```$/gm)].map(([, name, text]) => [name!, text!])
);
/** What two rules about the base find in a job. */
const found = async (text: string): Promise<string[]> =>
  (await evaluated(text, files)).findings
    .filter(({ id }) => id === 'base-on-clay' || id === 'base-thinner-than-usual')
    .map(({ severity, id, message }) => `${severity} ${id}: ${message}`)
    .sort();

const [printed] = /^The base of patio.*(?=\.$)/m.exec(guide)!;
const [, preferring] = /^Without the line `(.*?)`/m.exec(guide)!;
const patio = files['patio.paving']!;
const withoutLine = (text: string): string => text.replace(`\n  ${preferring!}\n`, '\n');

test('the first job finds what is printed below it, and no more than that', async () => {
  expect(await found(patio)).toEqual([`error base-on-clay: ${printed}.`]);
});

test('the town’s 5 in are enough, but for what is usual where nothing is preferred', async () => {
  const thicker = (text: string): string => text.replace(/crushed-stone 4 in(?=\n {2}edges)/, 'crushed-stone 5 in');
  expect(await found(thicker(patio))).toEqual([]);
  expect(withoutLine(patio)).not.toBe(patio);
  expect(await found(thicker(withoutLine(patio)))).toEqual([
    expect.stringMatching(/^warning base-thinner-than-usual: .* 6 in is usual/)
  ]);
  expect(await found(withoutLine(patio))).toEqual([
    `error base-on-clay: ${printed}; base-thinner-than-usual asks 6 in.`,
    expect.stringMatching(/^warning base-thinner-than-usual: .* 6 in is usual/)
  ]);
});

test('the rules about sides, bonds and joints find what is printed below them', async () => {
  const told = /^It tells:\n\n```\n([^]*?)\n```$/m.exec(guide)![1]!.split('\n');
  const { findings } = await evaluated(files['drive.paving']!, files);
  expect(findings.filter(({ severity }) => severity !== 'note').map(({ message }) => message)).toEqual(told);
});

test('a job that names the rulebook is checked by it', async () => {
  expect(await found(files['path.paving']!)).toEqual([
    expect.stringContaining('error base-on-clay: The base of path, 4 1/2 in, is 1/2 in too thin on clay')
  ]);
});

test('no file of it has a fault', async () => {
  for (const text of Object.values(files))
    expect(
      (await evaluated(text, files)).findings.filter(
        ({ family, severity }) => family === 'fault' && severity !== 'note'
      )
    ).toEqual([]);
});

test('a report for other programs holds the page of a rule of one’s own', () => {
  const { out } = paving(['check', '--format', 'sarif', 'patio.paving'], { cwd: folder(files) });
  const { runs } = JSON.parse(out) as {
    runs: { tool: { driver: { rules: { id: string; help: { text: string } }[] } } }[];
  };
  const [page] = runs[0]!.tool.driver.rules.filter(({ id }) => id === 'base-on-clay');
  expect(page!.help.text).toMatch(/^# Base on clay in our town\n/);
});

describe('it tells of everything', () => {
  test.each(Object.keys(BLOCKS.rule.statements))('of the word %s', word => {
    expect(guide).toMatch(new RegExp(`^- \`${word}\\b|, \`${word} `, 'm'));
  });

  test.each(CONCERNS)('that a rule about one %s can look at', concern => {
    for (const member of membersOf(concern)) expect(guide).toContain(`- \`${member.name}\` (`);
  });

  test.each(SOURCE_KINDS)('of the kind of source %s', kind => {
    expect(/^\*\*Sources\.\*\* .*$/m.exec(guide)![0]).toMatch(new RegExp(`[ ,]${kind}[ ,;]`));
  });

  test('in plain words', () => {
    expect(programmersWords(guide.replace(/```[^]*?```/g, ''))).toEqual([]);
  });
});
