import type { Command } from 'commander';
import { stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { QUESTION_IDS, type Answers } from '../../language/new-job/answers.ts';
import { checkAnswer, createTrial } from '../../language/new-job/check-answer.ts';
import type { Choice } from '../../language/new-job/choices.ts';
import { questionsFor } from '../../language/new-job/questions.ts';
import { writeNewJob } from '../../language/new-job/write-new-job.ts';
import type { Paving } from '../../language/paving.ts';
import { ask } from './asking.ts';
import { Failure } from './fail.ts';
import { write } from './output.ts';
import { STANDARD_INPUT } from './spec-paths.ts';
import { TypedLines } from './typed-lines.ts';

export function addNew(program: Command): void {
  program
    .command('new')
    .usage('[options] [FILE]')
    .argument('[file]')
    .summary('write a job spec from a few questions')
    .description(
      'Asks a few questions and writes a whole job spec from the answers: into FILE, or without it (or with -) to standard output. The questions themselves go to standard error.'
    )
    .option('--overwrite', 'write over a file that is there already')
    .addHelpText('after', EXAMPLES)
    .action(newJob);
}

const EXAMPLES = `
Examples:
  paving new patio.paving              asks, then writes the spec into patio.paving
  paving new > patio.paving            the same
  paving new --overwrite patio.paving  even where patio.paving is there already

The exit code is 2 when not every question was answered; nothing is written then.`;

async function newJob(file: string | undefined, options: { readonly overwrite?: true }): Promise<void> {
  const target = file === STANDARD_INPUT ? undefined : file;
  const overwrite = options.overwrite === true;
  // Nobody wants to hear it after the last answer.
  if (target !== undefined) await refuseEarly(target, overwrite);
  const trial = createTrial();
  const { text } = writeNewJob(await allAnswers(trial), trial);
  if (target === undefined) return write(text, undefined);
  // A file that has come meanwhile stays.
  await writeFile(target, text, { flag: overwrite ? 'w' : 'wx' }).catch(() => {
    throw new Failure(
      `${target} can't be written. Check that it is not there by now, and that its folder may be written to.`
    );
  });
  process.stderr.write(`
${target} is written. Measure what is marked so in it and write your own values, then:
  paving check ${target}
  paving quantities ${target}
`);
}

async function refuseEarly(target: string, overwrite: boolean): Promise<void> {
  if (!target.endsWith('.paving'))
    throw new Failure(`job specs are files that end in .paving. Write: paving new ${target}.paving`);
  const folder = path.dirname(target);
  if (!(await isThere(folder))) throw new Failure(`there is no folder ${folder}. Make it first, or name another.`);
  if (!overwrite && (await isThere(target)))
    throw new Failure(`${target} is there already and stays as it is. Name another file, or add --overwrite.`);
}

function isThere(place: string): Promise<boolean> {
  return stat(place).then(
    () => true,
    () => false
  );
}

async function allAnswers(trial: Paving): Promise<Answers> {
  const lines = new TypedLines();
  lines.say('In brackets stands the usual answer: Enter takes it. ? explains. Ctrl+C ends it, and nothing is written.');
  try {
    let answers: Answers = {};
    let choices: readonly Choice[] | undefined;
    for (const id of QUESTION_IDS) {
      const question = questionsFor(answers).find(each => each.id === id)!;
      const answer = await ask(question, lines, typed => checkAnswer(id, typed, answers, trial), choices);
      if (answer === undefined) throw new Failure('not every question was answered. Nothing is written.');
      answers = { ...answers, [id]: answer };
      choices = question.choices;
    }
    return answers;
  } finally {
    lines.close();
  }
}
