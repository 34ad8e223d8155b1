import type { Choice } from '../../language/new-job/choices.ts';
import { STEPS, type Question } from '../../language/new-job/questions.ts';
import type { TypedLines } from './typed-lines.ts';

/** What is wrong with an answer; undefined where it can be taken. */
export type Check = (answer: string) => string | undefined;

/** Asks one question until it has an answer; undefined when no more lines come. `before`: the choices shown last. */
export async function ask(
  question: Question,
  lines: TypedLines,
  check: Check,
  before: readonly Choice[] | undefined
): Promise<string | undefined> {
  const { step, title, hint, choices, usual } = question;
  lines.say(`\n${step} of ${STEPS}: ${title}\n${hint}`);
  if (choices !== undefined)
    lines.say(choices === before ? '  The same answers as before; ? lists them.' : list(choices));
  for (;;) {
    const typed = await lines.next(prompt(question));
    if (typed === undefined) return undefined;
    const answer = meant(typed.trim(), choices) ?? usual;
    const problem = answer === '?' ? undefined : (notOffered(answer, choices) ?? check(answer));
    if (problem === undefined && answer !== '?') return answer;
    lines.say([...(problem === undefined ? [] : [problem]), explanation(question)].join('\n'));
  }
}

/** Here the answers have numbers; their names are for shortcuts. */
function notOffered(answer: string, choices: readonly Choice[] | undefined): string | undefined {
  if (choices === undefined || choices.some(({ id }) => id === answer)) return undefined;
  return `\`${answer}\` is none of the answers. Write a number from 1 to ${choices.length}.`;
}

function prompt({ choices, usual }: Question): string {
  const shown = choices === undefined ? usual : choices.findIndex(({ id }) => id === usual) + 1;
  return `${choices === undefined ? 'Size' : 'Number'} [${shown}]: `;
}

/** A choice by its number, its name or the beginning of its words; anything else as typed; undefined for nothing. */
function meant(typed: string, choices: readonly Choice[] = []): string | undefined {
  if (typed === '') return undefined;
  const numbered = /^\d+$/.test(typed) ? choices[Number(typed) - 1] : undefined;
  const begun = choices.filter(({ label }) => label.toLowerCase().startsWith(typed.toLowerCase()));
  const named = choices.find(({ id }) => id === typed.toLowerCase());
  return (numbered ?? named ?? (begun.length === 1 ? begun[0] : undefined))?.id ?? typed;
}

function list(choices: readonly Choice[]): string {
  return choices.map(({ label }, index) => `${number(index)}  ${label}`).join('\n');
}

function explanation({ hint, choices }: Question): string {
  if (choices === undefined) return hint;
  return choices.map(({ label, detail }, index) => `${number(index)}  ${label}\n      ${detail}`).join('\n');
}

function number(index: number): string {
  return String(index + 1).padStart(4);
}
