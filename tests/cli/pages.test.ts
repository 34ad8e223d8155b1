// Each finding has a page, and the page is right: its wrong example yields the finding, its right one does not.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { FAULTS } from '../../language/findings/fault-list.ts';
import { SHIPPED_RULES, RULEBOOK_TEXTS } from '../../language/library/shipped.ts';
import type { Finding } from '../../language/findings/finding.ts';
import { GUIDE, shippedPages } from '../../language/pages.ts';
import { drain, Paving } from '../../language/paving.ts';
import type { SpecFiles } from '../../language/project.ts';
import { programmersWords } from '../faulty/plain-words.ts';

const folder = path.resolve(import.meta.dirname, '../../language/pages');
const files = readdirSync(folder).filter(name => name.endsWith('.md'));
const faults = Object.keys(FAULTS).sort();
const made = shippedPages();

/** Findings that no short text can show. */
const SKETCHED: Readonly<Record<string, string>> = {
  'sum-too-long': 'it takes more than 500 terms',
  'text-too-long': 'it takes more than a million characters',
  'text-unreadable': 'it is about files that are no text',
  'too-many-sides': 'it takes more than 1,000 sides',
  'too-many-tapes': 'it takes more than 30 points',
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
  const texts: Record<string, string> = {
    'example.paving': text,
    'prices.paving': '',
    'town.paving': 'rulebook town { }'
  };
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
  const paving = new Paving(inMemory, () => '2026-06-01');
  await paving.load('example.paving');
  return drain(paving.evaluate('example.paving'))!.findings;
}

test('each fault has a page, and each page a fault', () => {
  expect(files.map(name => name.replace(/\.md$/, '')).sort()).toEqual(faults);
});

test('each rule has a page that is made from it', () => {
  expect([...made.keys()].sort()).toEqual([...SHIPPED_RULES, GUIDE].sort());
});

describe.each(faults)('%s', id => {
  const page = read(id);
  const examples = examplesOf(page);

  test('is headed by its title', () => {
    const { title } = FAULTS[id]!;
    expect(page.startsWith(`# ${title}\n`)).toBe(true);
    expect(title).toMatch(/^[A-Z`]/);
  });

  test("holds none of a programmer's words, and promises nothing", () => {
    expect(badlySaid(page)).toEqual([]);
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

describe.each(SHIPPED_RULES)('%s', id => {
  const page = made.get(id)!;

  test('is headed by its title, and says why it matters, what is asked and where from', () => {
    expect(page).toMatch(/^# [A-Z].*\n\n[A-Z].*[.]\n/);
    expect(page).toMatch(/^[A-Z].*: (?:an error|a warning|a note)(?:, for the safety of people)?\. Of .*:\n\n- /m);
    expect(page).toMatch(
      /^Where from: (?:Standard|Code|Association guidance|Handbook|Common practice|From memory)\b.*\.$/m
    );
    expect(page).toContain(`\`accept ${id} on `);
    expect(page).not.toMatch(/(?<![0-9.]|DIN )[0-9]{5}|\.[0-9]+,[0-9]/);
  });

  test("holds none of a programmer's words, and promises nothing", () => {
    expect(badlySaid(page)).toEqual([]);
  });

  test('has a wrong and a right example', () => {
    expect(new Set(examplesOf(page).map(({ kind }) => kind))).toEqual(new Set(['wrong', 'right']));
  });
});

test.each([...RULEBOOK_TEXTS])('the examples of every rule of %s show it', (name, text) => {
  const paving = new Paving({
    resolve: () => undefined,
    read: () => Promise.resolve({ problem: 'missing' }),
    show: file => file
  });
  paving.setText(`${name}.paving`, text);
  const { findings } = drain(paving.evaluate(`${name}.paving`))!;
  expect(
    findings.filter(({ id }) => id === 'example-does-not-show').map(({ line, message }) => `${line}: ${message}`)
  ).toEqual([]);
  expect(paving.session.computations.examples).toBe([...text.matchAll(/^ {2}(?:wrong|right) \{/gm)].length);
});

/** The name of a published text is as it is. */
const TITLES = /ADA Standards for Accessible Design/g;

function badlySaid(page: string): string[] {
  const words = page.replace(/```[^]*?```/g, '').replace(TITLES, '');
  return [...programmersWords(words), ...(NEVER_SAID.exec(words) ?? [])];
}
