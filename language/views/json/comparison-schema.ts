import { DAY, DIALECT, FINDING, list, number, object, one, PLACE, type Schema, text, whole } from './schema.ts';
import { SCHEMA_NUMBER } from './schema-number.ts';

const value = (description: string): Schema => ({ type: ['number', 'string'], description });

/** What belongs to either text. */
const sides = (schema: Schema, description: string): Schema =>
  object({ 'before?': schema, 'after?': schema }, description);

const amount = (description: string): Schema => number(description, 'measure as named');
const money = (description: string): Schema => text(`${description}, decimal`);
const priced = {
  costs: money('At cost'),
  price: money('For the client, without tax'),
  tax: money('Tax on it'),
  toPay: money('Price and tax')
};

const underWay = object(
  {
    until: { type: 'string', pattern: DAY, description: 'Last day that the log tells of' },
    built: list(
      object({
        stage: text('Stage, as the log calls it'),
        area: text('Area'),
        name: text('What the area is called'),
        'material?': text('Of edging'),
        amounts: list(
          object({
            measure: one('m', 'm2', 'm3', 'kg'),
            built: amount('Built by the older text'),
            stays: amount('Of it what stays'),
            madeOtherwise: amount('What lies where the newer text wants it otherwise'),
            comesOut: amount('What the newer text has not'),
            toBuild: amount('Still to build')
          })
        ),
        because: list(text('Why it is made otherwise')),
        'out?': list(
          object({
            shape: one('straight', 'curve'),
            length: number('Edging that comes out', 'm'),
            'pieces?': whole('In so many pieces')
          })
        ),
        'places?': sides(object(PLACE), 'Where the area stands')
      }),
      'What the log tells as done'
    ),
    bought: list(
      object({
        thing: text('What is bought'),
        item: text('What it is called'),
        'isAsItWas?': { const: true, description: 'A unit of the same name is of another size now' },
        measure: text('SI measure; empty for pieces'),
        'wantedBefore?': amount('Wanted by the older text'),
        wanted: amount('Wanted by the newer text'),
        have: amount('Delivered and on hand'),
        isTold: { type: 'boolean', description: 'Else it is taken as bought for what is built' },
        again: amount('Wanted again for what comes out'),
        toBuy: amount('Still to buy'),
        over: amount('More than is wanted'),
        noLongerWanted: amount('Of it what the older text wanted'),
        packs: list(
          object({ count: whole('Packs'), pack: text('As they are called'), amount: amount('What they hold') })
        ),
        otherThanBatches: list(text('Batch that was delivered'), 'More of a unit will be of another batch')
      }),
      'What was bought'
    ),
    again: object(
      {
        tasks: list(
          object({ id: text('Task'), title: text('Title'), 'hours?': number('Hours of one person', 'h') }),
          'What the crew comes back to'
        ),
        hours: number('Hours of one person', 'h'),
        days: { type: 'integer', minimum: 0, description: 'Days of the crew, parts counted as one' },
        hires: list(
          object({ title: text('What is hired'), days: whole('Days'), 'cost?': money('What it costs more') })
        ),
        holds: list(object({ kind: text('Kind'), text: text('What is waited for'), 'days?': whole('Days') }))
      },
      'Work on what was done before'
    ),
    'price?': object({
      currency: text('ISO 4217'),
      before: object(priced, 'The whole job as it was'),
      lines: list(object({ id: one('whole', 'lost', 'goods', 'spent', 'again'), ...priced })),
      together: object(priced),
      without: list(one('taking-out', 'used-again', 'filling'), 'What is in none of it'),
      unpriced: list(text('What has no price now and had one, or was not there'))
    })
  },
  'What the change does to a job that is under way: the log, taken as built by the older text'
);

const job = object({
  id: text('Name among the jobs: the file of its newer text, or of its older where there is no other'),
  title: text('Title of the job'),
  'before?': text('File of its older text, relative, with forward slashes; absent of a job that is new'),
  'after?': text('File of its newer text; absent of a job that is gone'),
  'errors?': sides(
    { type: 'integer', minimum: 1, description: 'Number of errors' },
    'What has errors has no numbers: what is sound is compared'
  ),
  'underWay?': underWay
});

const change = object({
  id: text('Name within the job'),
  job: text('The job, by its `id`'),
  kind: one('job', 'edit', 'renamed', 'number', 'finding', 'money', 'task', 'days'),
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
