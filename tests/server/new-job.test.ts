// A new job asked for over the protocol.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type {
  CheckAnswerParams,
  CheckAnswerResult,
  NewJobQuestionsResult,
  NewJobText,
  WriteNewJobResult
} from '../../server/protocol.ts';
import { Client } from './client.ts';

let folder: string;
let client: Client;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'paving-server-'));
  client = new Client();
  await client.start(folder);
});

afterEach(async () => {
  await client.stop();
  rmSync(folder, { recursive: true });
});

test('from the questions to a text without findings', async () => {
  const { steps, questions } = await client.ask<NewJobQuestionsResult>('paving/newJobQuestions', {
    answers: { country: 'britain', soil: 'clay' }
  });
  expect(steps).toBe(5);
  const answers = Object.fromEntries(questions.map(({ id, usual }) => [id, usual]));
  expect(answers).toMatchObject({ country: 'britain', size: '4 x 5 m', water: 'stays' });
  const written = await client.ask<NewJobText>('paving/writeNewJob', { answers });
  expect(written.fileName).toBe('patio.paving');
  const { start, end } = written.firstToMeasure;
  expect(written.text.split('\n')[start.line]!.slice(start.character, end.character)).toBe('100 mm');
  const uri = 'untitled:patio.paving';
  await client.open(uri, written.text);
  expect((await client.findings(uri)).diagnostics).toEqual([]);
});

test('an answer is checked while it is typed, in the light of the others', async () => {
  const check = (params: CheckAnswerParams): Promise<CheckAnswerResult> => client.ask('paving/checkAnswer', params);
  const size = { question: 'size', answers: { country: 'britain' } };
  expect(await check({ ...size, answer: '4 x 5 m' })).toEqual({});
  expect(await check({ ...size, answer: '4 x 5' })).toEqual({
    problem: 'Say the measure too: `4 x 5 m`, or `4 x 5 ft`.'
  });
  expect((await check({ question: 'soil', answer: 'mud', answers: {} })).problem).toContain('none of the answers');
  expect((await check({ question: 'no such', answer: '', answers: {} })).problem).toContain('no question');
});

test('answers that can’t be taken make no text', async () => {
  const answers = { country: 'britain', trafic: 'cars' };
  expect(await client.ask<WriteNewJobResult>('paving/writeNewJob', { answers })).toEqual({
    problem: 'There is no question `trafic`. Did you mean traffic?'
  });
});
