import type { Finding } from '../findings/finding.ts';
import { drain, Paving } from '../paving.ts';
import type { SpecFiles } from '../project.ts';
import { nearest } from '../syntax/nearest.ts';
import { QUESTION_IDS, withUsual, type Answers, type QuestionId } from './answers.ts';
import { CHOICES } from './choices.ts';
import { questionsFor } from './questions.ts';
import { writeNewJob } from './write-new-job.ts';

/** What answers are tried out in: one for all questions, since each keystroke in a box is checked. */
export function createTrial(): Paving {
  return new Paving(NO_FILES);
}

/** Why an answer can't be taken, and what to write; undefined where it can. `answers` are those to the other questions. */
export function checkAnswer(id: string, answer: string, answers: Answers, trial: Paving): string | undefined {
  if (!isQuestion(id)) return noQuestion(id);
  const choices = CHOICES[id];
  if (choices === undefined) return sizeProblem(answer, answers, trial);
  const ids = choices.map(choice => choice.id);
  if (ids.includes(answer)) return undefined;
  const meant = nearest(answer, ids);
  const help = meant === undefined ? `Write one of: ${ids.join(', ')}.` : `Did you mean ${meant}?`;
  return `\`${answer}\` is none of the answers. ${help}`;
}

/** Answers that came from outside, as they are or with what is wrong with the first that can't be taken. */
export function readAnswers(
  given: Readonly<Record<string, unknown>>,
  trial: Paving
): { readonly answers: Answers } | { readonly problem: string } {
  const unknown = Object.keys(given).find(name => !isQuestion(name));
  if (unknown !== undefined) return { problem: noQuestion(unknown) };
  const answers = given as Answers;
  for (const { id, title } of questionsFor({})) {
    const answer = given[id];
    if (answer === undefined) continue;
    const problem = typeof answer === 'string' ? checkAnswer(id, answer, answers, trial) : 'Write it as text.';
    if (problem !== undefined) return { problem: `${title} ${problem}` };
  }
  return { answers };
}

function noQuestion(name: string): string {
  return `There is no question \`${name}\`. Did you mean ${nearest(name, QUESTION_IDS) ?? QUESTION_IDS.join(', ')}?`;
}

function isQuestion(name: string): name is QuestionId {
  return QUESTION_IDS.some(id => id === name);
}

/** Of the answers only those that bear on a size: the others may not be checked yet. */
function sizeProblem(size: string, { country, traffic }: Answers, trial: Paving): string | undefined {
  const others = { ...(country === undefined ? {} : { country }), ...(traffic === undefined ? {} : { traffic }) };
  const example = withUsual(others).size;
  const words = wordsOf(size, trial);
  if (words === undefined) return `Write two lengths with x between them, such as \`${example}\`.`;
  if (!words.includes('MEASURE')) {
    const [measure, other] = /ft$/.test(example) ? ['ft', 'm'] : ['m', 'ft'];
    return `Say the measure too: \`${size} ${measure}\`, or \`${size} ${other}\`.`;
  }
  const { text } = writeNewJob({ ...others, size }, trial);
  // What a size leaves to be cut is told in the spec, and mended there.
  return findingsOf(text, trial).find(({ family }) => family === 'fault')?.message;
}

/** The kinds of words in a size; undefined where it is none: nothing else may slip into the spec. */
function wordsOf(size: string, { parse }: Paving): string[] | undefined {
  if (/[{}\r\n]|\/\//.test(size)) return undefined;
  const { tokens } = parse(`area new {\noutline rectangle ${size}\n}\n`);
  const kinds = tokens.map(({ tokenType }) => tokenType.name).slice(WORDS_BEFORE_SIZE, -1);
  const isSize = kinds.every(kind => SIZE_WORDS.has(kind)) && kinds.filter(kind => kind === 'BY').length === 1;
  return isSize ? kinds : undefined;
}

/** `area new { outline rectangle` */
const WORDS_BEFORE_SIZE = 5;

const SIZE_WORDS: ReadonlySet<string> = new Set(['NUMBER', 'MEASURE', 'BY', '-']);

function findingsOf(text: string, trial: Paving): readonly Finding[] {
  trial.setText(FILE, text);
  return drain(trial.evaluate(FILE, 'findings'))?.findings ?? [];
}

const FILE = 'new.paving';

const NO_FILES: SpecFiles = {
  resolve: () => undefined,
  read: () => Promise.resolve({ problem: 'missing' }),
  show: file => file
};
