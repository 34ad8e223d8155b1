import { checkAnswer, createTrial, readAnswers } from '../../language/new-job/check-answer.ts';
import { questionsFor, STEPS } from '../../language/new-job/questions.ts';
import { writeNewJob } from '../../language/new-job/write-new-job.ts';
import { rangeOf } from '../diagnostics.ts';
import type { Feature } from '../feature.ts';
import {
  checkAnswerRequest,
  newJobQuestionsRequest,
  writeNewJobRequest,
  type CheckAnswerParams,
  type CheckAnswerResult,
  type NewJobQuestionsParams,
  type NewJobQuestionsResult,
  type WriteNewJobParams,
  type WriteNewJobResult
} from '../protocol.ts';

/** What leads a person from a few questions to a whole spec. */
export const newJob: Feature = {
  capabilities: {},
  register({ connection }) {
    const trial = createTrial();
    connection.onRequest(newJobQuestionsRequest, ({ answers }: NewJobQuestionsParams): NewJobQuestionsResult => ({
      steps: STEPS,
      questions: questionsFor(answers)
    }));
    connection.onRequest(checkAnswerRequest, ({ question, answer, answers }: CheckAnswerParams): CheckAnswerResult => {
      const problem = checkAnswer(question, answer, answers, trial);
      return problem === undefined ? {} : { problem };
    });
    connection.onRequest(writeNewJobRequest, ({ answers }: WriteNewJobParams): WriteNewJobResult => {
      const read = readAnswers(answers, trial);
      if ('problem' in read) return read;
      const { text, fileName, firstToMeasure } = writeNewJob(read.answers, trial);
      return { text, fileName, firstToMeasure: rangeOf(firstToMeasure) };
    });
  }
};
