import { QUESTION_IDS, withUsual, type Answers, type QuestionId } from './answers.ts';
import { CHOICES, type Choice } from './choices.ts';

/** One question as asked of a person. */
export interface Question {
  readonly id: QuestionId;
  /** Which of the five steps it belongs to, from 1. */
  readonly step: number;
  readonly title: string;
  /** How to find the answer. */
  readonly hint: string;
  /** Absent where the answer is typed. */
  readonly choices?: readonly Choice[];
  /** What was answered so far, else what is usual: the id of a choice, or a text. */
  readonly usual: string;
}

export const STEPS = 5;

const STEP: Readonly<Record<QuestionId, number>> = {
  country: 1,
  traffic: 2,
  near: 3,
  size: 3,
  left: 4,
  far: 4,
  right: 4,
  soil: 5,
  water: 5,
  winters: 5
};

const TITLES: Readonly<Record<QuestionId, string>> = {
  country: 'Where is the job?',
  traffic: 'What goes over it?',
  near: 'What does it stand against?',
  size: 'How large is it?',
  left: 'What lies on the left?',
  far: 'What lies on the far side?',
  right: 'What lies on the right?',
  soil: 'What soil is under the topsoil?',
  water: 'Does water stay on this ground?',
  winters: 'What are winters like?'
};

const SEEN = 'As seen with your back to the near side. Open ground needs edging; the spec names it.';

const HINTS: Readonly<Record<Exclude<QuestionId, 'size'>, string>> = {
  country: 'It says which rules check the job, and in which measures.',
  traffic: 'The heaviest that ever comes counts, even if it comes seldom.',
  near: 'This is the near side. Left, far and right are as seen with your back to it.',
  left: SEEN,
  far: SEEN,
  right: SEEN,
  soil: 'Wet a handful. In doubt take clay. On filled or peaty ground ask a licensed engineer.',
  water: 'Look after rain, or fill a hole with water and look the next day.',
  winters: 'Frost in wet ground lifts paving; the base gets thicker for it.'
};

/** The questions in their order. What was answered so far decides the usual answers of the others. */
export function questionsFor(answers: Answers): Question[] {
  const usual = withUsual(answers);
  return QUESTION_IDS.map(id => {
    const choices = CHOICES[id];
    return {
      id,
      step: STEP[id],
      title: TITLES[id],
      hint: id === 'size' ? sizeHint(answers) : HINTS[id],
      ...(choices === undefined ? {} : { choices }),
      usual: usual[id]
    };
  });
}

function sizeHint(answers: Answers): string {
  const { near, country } = withUsual(answers);
  const along = near === 'open' ? 'The near side' : 'Along what it stands against';
  const example = country === 'north-america' ? "12 x 16 ft or 12' 6\" x 16'" : '3.6 x 4.8 m or 3600 x 4800 mm';
  return `${along} first, then out from it: ${example}.`;
}
