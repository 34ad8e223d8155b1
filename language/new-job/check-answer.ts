import type { Finding } from '../findings/finding.ts';
import { drain, Paving } from '../paving.ts';
import type { SpecFiles } from '../project.ts';
import { nearest } from '../syntax/nearest.ts';
import type { Parse } from '../syntax/parse.ts';
import { QUESTION_IDS, withUsual, type Answers, type QuestionId } from './answers.ts';
import { CHOICES } from './choices.ts';
import { writeNewJob } from './write-new-job.ts';

/** Why an answer can't be taken, and what to write; undefined where it can. `answers` are those to the other questions. */
export function checkAnswer(id: QuestionId, answer: string, answers: Answers, parse: Parse): string | undefined {
  const choices = CHOICES[id];
  if (choices === undefined) return sizeProblem(answer, answers, parse);
  const ids = choices.map(choice => choice.id);
  if (ids.includes(answer)) return undefined;
  const meant = nearest(answer, ids);
  const help = meant === undefined ? `Write one of: ${ids.join(', ')}.` : `Did you mean ${meant}?`;
  return `\`${answer}\` is none of the answers. ${help}`;
}

export interface WrongAnswer {
  readonly id: QuestionId;
  readonly problem: string;
}

/** The first answer that can't be taken, and why. */
export function checkAnswers(answers: Answers, parse: Parse): WrongAnswer | undefined {
  for (const id of QUESTION_IDS) {
    const answer = answers[id];
    const problem = answer === undefined ? undefined : checkAnswer(id, answer, answers, parse);
    if (problem !== undefined) return { id, problem };
  }
  return undefined;
}

/** Of the answers only those that bear on a size: the others may not be checked yet. */
function sizeProblem(size: string, { country, traffic }: Answers, parse: Parse): string | undefined {
  const others = { ...(country === undefined ? {} : { country }), ...(traffic === undefined ? {} : { traffic }) };
  const example = withUsual(others).size;
  const words = wordsOf(size, parse);
  if (words === undefined) return `Write two lengths with x between them, such as \`${example}\`.`;
  if (!words.includes('MEASURE')) {
    const [measure, other] = /ft$/.test(example) ? ['ft', 'm'] : ['m', 'ft'];
    return `Say the measure too: \`${size} ${measure}\`, or \`${size} ${other}\`.`;
  }
  return findingsOf(writeNewJob({ ...others, size }, parse).text).find(({ id }) => id !== 'trucks-need-an-engineer')
    ?.message;
}

/** The kinds of words in a size; undefined where it is none: nothing else may slip into the spec. */
function wordsOf(size: string, parse: Parse): string[] | undefined {
  if (/[{}\r\n]|\/\//.test(size)) return undefined;
  const { tokens } = parse(`area new {\noutline rectangle ${size}\n}\n`);
  const kinds = tokens.map(({ tokenType }) => tokenType.name).slice(WORDS_BEFORE_SIZE, -1);
  const isSize = kinds.every(kind => SIZE_WORDS.has(kind)) && kinds.filter(kind => kind === 'BY').length === 1;
  return isSize ? kinds : undefined;
}

/** `area new { outline rectangle` */
const WORDS_BEFORE_SIZE = 5;

const SIZE_WORDS: ReadonlySet<string> = new Set(['NUMBER', 'MEASURE', 'BY', '-']);

function findingsOf(text: string): readonly Finding[] {
  const paving = new Paving(NO_FILES);
  paving.setText(FILE, text);
  return drain(paving.evaluate(FILE, 'findings'))?.findings ?? [];
}

const FILE = 'new.paving';

const NO_FILES: SpecFiles = {
  resolve: () => undefined,
  read: () => Promise.resolve({ problem: 'missing' }),
  show: file => file
};
