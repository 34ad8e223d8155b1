import { DAY, DIALECT, FINDING, list, object, one, PLACE, type Schema, text } from './schema.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

const value = (description: string): Schema => ({ type: ['number', 'string'], description });

/** What belongs to either text. */
const sides = (schema: Schema, description: string): Schema =>
  object({ 'before?': schema, 'after?': schema }, description);

const job = object({
  id: text('Name among the jobs: the file of its newer text, or of its older where there is no other'),
  title: text('Title of the job'),
  'before?': text('File of its older text, relative, with forward slashes; absent of a job that is new'),
  'after?': text('File of its newer text; absent of a job that is gone'),
  'errors?': sides(
    { type: 'integer', minimum: 1, description: 'Number of errors' },
    'What has errors has no numbers: what is sound is compared'
  )
});

const change = object({
  id: text('Name within the job'),
  job: text('The job, by its `id`'),
  kind: one('job', 'edit', 'renamed', 'number', 'finding', 'money', 'days'),
  label: text('What it is; of a job `new` or `gone`, of a finding what became of it'),
  'before?': value('A number in SI, an amount of money as decimal text, or words'),
  'after?': value('The same of the newer text'),
  'change?': value('After less before, where both are numbers or both are money'),
  'measure?': text('SI measure, currency or `days`; empty for counts and shares'),
  edited: { type: 'boolean', description: 'It was written otherwise; else it follows from what was' },
  'written?': sides(text('The statement as written'), 'Of an edit of one quantity alone'),
  'finding?': { $ref: '#/$defs/finding' },
  'causes?': list(text('Edit of the same job, by its `id`'), 'Edits found in its working; absent where none is known'),
  'places?': sides(object(PLACE), 'Where it stands')
});

/** JSON Schema of `compare`. */
export const COMPARISON_SCHEMA: Schema = {
  $schema: DIALECT,
  title: 'Paving jobs compared',
  description: 'In SI: m, m2, m3, kg, degrees; money as decimal text. A key that cannot be told is absent.',
  ...object({
    schema: { const: SCHEMA_NUMBER },
    tool: text('Program and version'),
    asOf: { type: 'string', pattern: DAY, description: 'Day both texts are worked out for' },
    from: text('What is compared: a revision, or a file'),
    to: text('With what: a revision, `the working copy`, or a file'),
    jobs: list(job, 'All that were compared, by file'),
    changes: list(change, 'Job by job: edits first, then what follows from them')
  }),
  $defs: { finding: FINDING }
};
