// The editor reads what `paving check --format line` prints by the pattern of the manifest.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { CheckJson } from '../../language/views/json/check-json.ts';
import { paving, root } from '../cli/run.ts';

interface Pattern {
  readonly regexp: string;
  readonly file: number;
  readonly line: number;
  readonly column: number;
  readonly severity: number;
  readonly message: number;
  readonly code: number;
}

const { contributes } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
  contributes: {
    problemPatterns: (Pattern & { name: string })[];
    problemMatchers: { name: string; pattern: string; applyTo: string }[];
  };
};

test('every line of a report over many faulty specs is read as the finding that it is', () => {
  const [pattern] = contributes.problemPatterns;
  const [matcher] = contributes.problemMatchers;
  expect(matcher).toMatchObject({ name: 'paving', pattern: `$${pattern!.name}` });
  const files = readdirSync(path.join(root, 'tests/faulty'))
    .filter(name => name.endsWith('.paving'))
    .map(name => `tests/faulty/${name}`);
  const { out } = paving(['check', '--format', 'line', ...files]);
  const { findings } = JSON.parse(paving(['check', '--format', 'json', ...files]).out) as CheckJson;
  const read = out
    .trimEnd()
    .split('\n')
    .map(line => {
      const found = new RegExp(pattern!.regexp).exec(line);
      if (found === null) throw new Error(`Not read: ${line}`);
      return {
        file: found[pattern!.file],
        line: Number(found[pattern!.line]),
        column: Number(found[pattern!.column]),
        severity: found[pattern!.severity],
        id: found[pattern!.code]
      };
    });
  // What is set aside stands in the JSON alone.
  const told = findings.filter(({ accepted }) => accepted === undefined);
  expect(read).toEqual(told.map(({ file, line, column, severity, id }) => ({ file, line, column, severity, id })));
  expect(new Set(read.map(({ severity }) => severity))).toEqual(new Set(['error', 'warning', 'note']));
});

test('nothing but findings is read as one', () => {
  const { regexp } = contributes.problemPatterns[0]!;
  const others = [
    '',
    'paving: there is no file x.paving. Check the name.',
    '12 errors, 3 warnings',
    'a:1:2: wrong: b [c]'
  ];
  expect(others.filter(line => new RegExp(regexp).test(line))).toEqual([]);
});
