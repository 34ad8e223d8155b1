// What is set aside is told nowhere, as long as all that it takes is said, and something is found.
import { describe, expect, test } from 'vitest';
import { drain, Paving, type Evaluation } from '../../language/paving.ts';
import { applyChanges } from '../../language/editing/apply-changes.ts';
import { inMemory } from './in-memory.ts';

const JOB = `job "Patio" { rules north-america }
site { soil common-earth, winters mild, benchmark sill, ground level with sill }
unit slab-16 { size 16 x 16 x 1 1/2 in }
area terrace {
  outline rectangle 12 x 16 ft
  traffic foot
  finish  level with sill
  paving  slab-16 in running-bond
  base    crushed-stone 3 in
  edges { all round meets lawn, edging spiked-strip }
}
`;
const REASON = 'because "rock lies 3 in down"';
const on = (rule: string, thing: string, how = 'until 2026-06-30'): string =>
  `accept ${rule} on ${thing} ${REASON} ${how}\n`;

function evaluated(
  text: string,
  today = '2026-05-01',
  others: Readonly<Record<string, string>> = {}
): Promise<Evaluation> {
  const paving = new Paving(inMemory({ ...others, 'job.paving': text }), () => today);
  return paving.load('job.paving').then(() => drain(paving.evaluate('job.paving'))!);
}

/** What is told of rules, faults of notes apart, and what is set aside. */
async function told(
  text: string,
  today?: string,
  others?: Readonly<Record<string, string>>
): Promise<{ found: string[]; accepted: string[] }> {
  const { findings, accepted } = await evaluated(text, today, others);
  return {
    found: findings.filter(({ severity }) => severity !== 'note').map(({ id, target }) => `${id} ${target}`),
    accepted: accepted.map(
      ({ id, target, accepted: { until, agreedWith } }) => `${id} ${target} ${until ?? agreedWith!}`
    )
  };
}

const OWN = `rule own-unit {
  concerns unit
  needs    thickness at least 2 in
  says     "The unit is " thickness " thick, " missing " less than here."
  cites    common-practice
}
rule own-layer {
  concerns layer
  when     role is base
  needs    thickness at least 5 in
  says     "The layer is " thickness " thick, " missing " less than here."
  cites    common-practice
}
`;

const UNIT = 'own-unit unit:slab-16';
const LAYER = 'own-layer area:terrace/base';
const THIN = 'base-too-thin area:terrace';

describe('what is set aside', () => {
  test('is a finding of the rule on the thing or in it, and no other', async () => {
    expect(await told(JOB + OWN)).toEqual({ found: [UNIT, THIN, LAYER], accepted: [] });
    expect(await told(`${JOB}${OWN}${on('own-layer', 'terrace')}`)).toEqual({
      found: [UNIT, THIN],
      accepted: [`${LAYER} 2026-06-30`]
    });
    expect(await told(`${JOB}${OWN}${on('own-unit', 'slab-16', 'for good, agreed with "the client"')}`)).toEqual({
      found: [THIN, LAYER],
      accepted: [`${UNIT} the client`]
    });
    const onSite =
      'rule dry {\n concerns site\n needs winters is freeze\n says "Winters."\n cites common-practice\n}\n';
    expect(await told(`${JOB}${onSite}${on('dry', 'site')}${on('base-too-thin', 'terrace')}`)).toEqual({
      found: [],
      accepted: ['dry site 2026-06-30', `${THIN} 2026-06-30`]
    });
  });

  test('keeps all that was said of it, and the place where it was', async () => {
    const { accepted } = await evaluated(JOB + on('base-too-thin', 'terrace'));
    expect(accepted.map(finding => finding.accepted)).toEqual([
      {
        rule: 'base-too-thin',
        thing: 'terrace',
        reason: 'rock lies 3 in down',
        until: '2026-06-30',
        file: 'job.paving',
        line: 12,
        column: 1,
        endLine: 12,
        endColumn: on('base-too-thin', 'terrace').length
      }
    ]);
  });

  test('may stand in any file of the job, whichever of them declares the thing and the rule', async () => {
    const accepts = on('base-too-thin', 'terrace') + on('own-unit', 'slab-16');
    const others = { 'accepts.paving': accepts };
    expect(await told(`use "accepts.paving"\n${JOB}${OWN}`, '2026-05-01', others)).toEqual({
      found: [LAYER],
      accepted: [`${UNIT} 2026-06-30`, `${THIN} 2026-06-30`]
    });
    expect(await told(accepts)).toEqual({ found: [], accepted: [] });
  });

  test('is the same where findings alone are wanted', async () => {
    const paving = new Paving(inMemory({ 'job.paving': JOB + on('base-too-thin', 'terrace') }));
    await paving.load('job.paving');
    expect(drain(paving.evaluate('job.paving', 'findings'))!.accepted).toEqual(
      drain(paving.evaluate('job.paving'))!.accepted
    );
  });
});

describe('past its day', () => {
  const text = JOB + on('base-too-thin', 'terrace');

  test('it returns, says since when, and leads to where it was set aside; on its day it still holds', async () => {
    expect(await told(text, '2026-06-30')).toEqual({ found: [], accepted: [`${THIN} 2026-06-30`] });
    const { findings, accepted } = await evaluated(text, '2026-07-01');
    expect(accepted).toEqual([]);
    expect(findings).toMatchObject([
      {
        id: 'base-too-thin',
        severity: 'error',
        message: expect.stringMatching(/ \(set aside until 2026-06-30, which has passed\)\.$/) as string,
        related: [{ message: 'Set aside here until 2026-06-30.', line: 12 }]
      }
    ]);
  });

  test('what mends it takes out the words that set it aside', async () => {
    const { findings } = await evaluated(text, '2026-07-01');
    const [fix] = findings[0]!.fixes;
    const mended = applyChanges(text, fix!.edits);
    expect(mended).toContain('base    crushed-stone 4 in');
    expect(mended).not.toContain('accept');
    expect(await told(mended, '2026-07-01')).toEqual({ found: [], accepted: [] });
  });

  test('what is agreed for good never passes, and without a day nothing does', async () => {
    const forGood = JOB + on('base-too-thin', 'terrace', 'for good, agreed with "the client"');
    expect((await told(forGood, '9999-12-31')).accepted).toEqual([`${THIN} the client`]);
    expect((await told(JOB + on('base-too-thin', 'terrace', 'until 1999-01-01'), '')).accepted).toHaveLength(1);
  });
});

/** Findings about `accept`, with the words that they stand at. */
async function faultsOf(accept: string): Promise<string[]> {
  const { findings } = await evaluated(JOB + accept);
  return findings
    .filter(({ line }) => line > 11)
    .map(({ id, column, endColumn, message }) => `${accept.slice(column - 1, endColumn - 1)}: ${id}: ${message}`);
}

describe('what does not set anything aside', () => {
  test.each([
    ['accept base-too-thin', ['base-too-thin: accept-incomplete: This does not say on what.', 'why', 'until when']],
    ['accept base-too-thin on terrace', ['terrace: accept-incomplete: This does not say why.', 'until when']],
    ['accept base-too-thin on terrace because "x"', ['"x": accept-incomplete: This does not say until when.']],
    ['accept base-too-thin on site because "x"', ['"x": accept-incomplete: This does not say until when.']],
    ['accept base-too-thin on terrace because " " until 2026-06-30', ['" ": accept-incomplete: This does not say why']],
    ['accept base-too-thin on terrace until 2026-06-30', ['terrace: accept-incomplete: This does not say why']],
    ['accept base-too-thin on terrace because "x" for good', ['for: accept-incomplete: What is set aside for good']],
    [
      'accept base-too-thin on terrace because "x" for good, agreed with ""',
      ['"": accept-incomplete: What is set aside for good']
    ],
    [
      'accept base-too-thin on terrace because "x" until 2026-02-31',
      ['2026-02-31: out-of-range: 2026-02-31 is no day.']
    ],
    [
      'accept edge-not-said on terrace because "x" until 2026-06-30',
      ['edge-not-said: unknown-name: `edge-not-said` is no rule']
    ],
    ['accept base-to-thin on terrace because "x" until 2026-06-30', ['base-to-thin: unknown-name: No rule is called']],
    ['accept base-too-thin on terace because "x" until 2026-06-30', ['Did you mean `terrace`?']]
  ])('%s', async (accept, says) => {
    const faults = await faultsOf(accept);
    expect(faults).toHaveLength(says.length);
    says.forEach((said, index) => expect(faults[index]).toContain(said));
    expect((await told(JOB + accept)).found).toContain(THIN);
  });

  test('the same said twice', async () => {
    const accept = on('base-too-thin', 'terrace');
    const { findings } = await evaluated(JOB + accept + accept);
    expect(findings).toMatchObject([{ id: 'said-twice', line: 13, related: [{ line: 12 }] }]);
    const mended = applyChanges(JOB + accept + accept, findings[0]!.fixes[0]!.edits);
    expect(mended).toBe(JOB + accept);
  });
});

describe('where nothing is found', () => {
  const messages = async (text: string): Promise<string[]> =>
    (await evaluated(text)).findings.filter(({ id }) => id === 'accept-unmatched').map(({ message }) => message);

  test('it says so, names where something is found, and is taken out', async () => {
    const elsewhere = JOB + on('base-too-thin', 'slab-16');
    expect(await messages(elsewhere)).toEqual([
      'The rule base-too-thin finds nothing on slab-16 now, so there is nothing to set aside. It does on terrace.'
    ]);
    const { findings } = await evaluated(elsewhere);
    const fixes = findings.find(({ id }) => id === 'accept-unmatched')!.fixes;
    const [moved, out] = fixes.map(({ edits }) => applyChanges(elsewhere, edits));
    expect(moved).toBe(JOB + on('base-too-thin', 'terrace'));
    expect(out).toBe(JOB);
  });

  test('a rule of another rulebook is not among those of the job', async () => {
    const other = 'rulebook town { title "Town" }\n' + OWN;
    expect(await messages(`${JOB}${on('own-unit', 'slab-16')}${other}`)).toEqual([
      'The rule own-unit is not among the rules of this job, so there is nothing to set aside.'
    ]);
  });

  test('what has no numbers now may have findings again', async () => {
    const broken = JOB.replace('crushed-stone 3 in', 'crushed-stone 3 inn');
    expect(await messages(broken + on('base-too-thin', 'terrace') + on('base-too-thin', 'slab-16'))).toEqual([]);
    const crossing = JOB.replace('rectangle 12 x 16 ft', 'from (0, 0) to (3, 3) to (3, 0) to (0, 3) m back to start');
    expect(await messages(crossing + on('base-too-thin', 'terrace'))).toEqual([]);
  });

  test('nor is anything told where the rule itself has a fault', async () => {
    const faulty = OWN.replace('thickness at least 2 in', 'thikness at least 2 in');
    expect(await messages(JOB + on('own-unit', 'slab-16') + faulty)).toEqual([]);
  });
});
