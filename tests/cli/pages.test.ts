// Each finding has a page, and the page is right: its wrong example yields the finding, its right one does not.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { FAULTS } from '../../language/findings/fault-list.ts';
import { SHIPPED_RULES } from '../../language/library/shipped.ts';
import type { Finding } from '../../language/findings/finding.ts';
import { drain, Paving } from '../../language/paving.ts';
import type { SpecFiles } from '../../language/project.ts';
import { programmersWords } from '../faulty/plain-words.ts';

const folder = path.resolve(import.meta.dirname, '../../language/pages');
const files = readdirSync(folder).filter(name => name.endsWith('.md'));
const ids = [...new Set([...Object.keys(FAULTS), ...SHIPPED_RULES])].sort();

/** Findings that no short text can show. */
const SKETCHED: Readonly<Record<string, string>> = {
  'sum-too-long': 'it takes more than 500 terms',
  'text-too-long': 'it takes more than a million characters',
  'text-unreadable': 'it is about files that are no text',
  'too-many-sides': 'it takes more than 1,000 sides',
  'use-too-many': 'it takes more than 200 files',
  internal: 'nothing a user writes leads to it'
};

const NEVER_SAID = /\b(complies|accessible|safe|strong enough|drains enough|frost-proof|guaranteed?|no permit)\b/i;

interface Example {
  readonly kind: string;
  readonly how: string | undefined;
  readonly text: string;
}

const read = (id: string): string => readFileSync(path.join(folder, `${id}.md`), 'utf8');
const examplesOf = (page: string): Example[] =>
  [...page.matchAll(/^```paving (wrong|right)(?: (sketch|alone))?\n([^]*?)^```$/gm)].map(([, kind, how, text]) => ({
    kind: kind!,
    how,
    text: text!
  }));

/** The rest of a job round an example: what it names but does not show. */
function framed({ how, text }: Example): string {
  if (how === 'alone') return text;
  const frame = [
    ...(/^job\b/m.test(text) ? [] : ['job "Example" { rules north-america }']),
    ...[
      ['slab-16', '16 x 16 x 2 in'],
      ['slab-400', '400 x 400 x 50 mm']
    ].flatMap(([name, size]) =>
      text.includes(`${name!} in `) && !text.includes(`unit ${name!}`) ? [`unit ${name!} { size ${size!} }`] : []
    )
  ];
  return [...frame, text].join('\n');
}

async function check(text: string): Promise<readonly Finding[]> {
  const texts: Record<string, string> = { 'example.paving': text, 'prices.paving': '' };
  const inMemory: SpecFiles = {
    resolve: (_from, written) => (written.startsWith('..') ? undefined : written),
    read: async file => {
      await Promise.resolve();
      if (file === 'photo.paving') return { problem: 'binary' };
      const found = texts[file];
      return found === undefined ? { problem: 'missing' } : { text: found };
    },
    show: file => file
  };
  const paving = new Paving(inMemory);
  await paving.load('example.paving');
  return drain(paving.evaluate('example.paving'))!.findings;
}

test('each finding has a page, and each page a finding', () => {
  expect(files.map(name => name.replace(/\.md$/, '')).sort()).toEqual(ids);
});

describe.each(ids)('%s', id => {
  const page = read(id);
  const examples = examplesOf(page);

  test('is headed by its title', () => {
    const title = FAULTS[id]?.title ?? /^# (.+)$/m.exec(page)![1]!;
    expect(page.startsWith(`# ${title}\n`)).toBe(true);
    expect(title).toMatch(/^[A-Z`]/);
  });

  test("holds none of a programmer's words, and promises nothing", () => {
    const words = page.replace(/```[^]*?```/g, '');
    expect(programmersWords(words)).toEqual([]);
    expect(NEVER_SAID.exec(words)?.[0]).toBeUndefined();
  });

  test('has a wrong example that yields it, and a right one that does not', async () => {
    expect(examples.map(({ kind }) => kind)).toEqual(['wrong', 'right']);
    const [wrong, right] = examples;
    expect(wrong!.how === 'sketch').toBe(id in SKETCHED);
    if (!(id in SKETCHED)) expect((await check(framed(wrong!))).map(finding => finding.id)).toContain(id);
    const found = await check(framed(right!));
    expect(
      found.filter(finding => finding.id === id || (finding.family === 'fault' && finding.severity === 'error'))
    ).toEqual([]);
  });
});
