import { FAULTS } from './findings/fault-list.ts';
import type { Finding, Place, RawFinding } from './findings/finding.ts';
import type { Job } from './job/job.ts';
import type { Rule } from './job/rule.ts';
import { lower } from './lowering/lower.ts';
import type { Project } from './lowering/project.ts';
import { jobsOfExamples, projectOfExample, seenByExample, type RuleExample } from './lowering/rule-examples.ts';
import { judgeJob } from './quantities/compute-job.ts';
import { Session } from './session/session.ts';
import type { Parse } from './syntax/parse.ts';

/** What is wrong with an example, and where in it; lines and columns count from its open brace. */
interface ExampleFault {
  readonly message: string;
  readonly at?: Omit<Place, 'file'>;
}

/**
 * Works out the examples of rules: a wrong one has to break its rule, a right one has to keep it. What an example came to
 * is remembered in `scope` until the rule, the example or what it sees changes.
 */
export function* exampleFindings(
  examples: readonly RuleExample[],
  project: Project,
  { parse, session, scope }: { readonly parse: Parse; readonly session: Session; readonly scope: string }
): Generator<void, Finding[]> {
  const findings: Finding[] = [];
  const things = new Set<string>();
  const seen = new Map<string, string>();
  const jobOf = jobsOfExamples(project);
  for (const example of examples) {
    const { rule, what, written, text } = example;
    const thing = [text.file, rule.key, things.size].join('\n');
    things.add(thing);
    if (!seen.has(text.file)) seen.set(text.file, seenByExample(example, project));
    const inputs = { rule, what, written, job: jobOf(example), seen: seen.get(text.file)! };
    const fault = yield* session.recall({ scope, stage: 'examples', thing }, inputs, () =>
      faultOf(example, project, inputs.job, parse)
    );
    if (fault !== undefined) findings.push(findingOf(example, fault));
  }
  session.forgetOthers(scope, thing => things.has(thing));
  return findings;
}

function* faultOf(
  example: RuleExample,
  project: Project,
  job: string,
  parse: Parse
): Generator<void, ExampleFault | undefined> {
  const { rule, what, written } = example;
  yield;
  const alone = projectOfExample(example, parse(`${job}\n${written}`), project);
  const lowered = lower(alone);
  const errors = lowered.findings.filter(({ severity }) => severity === 'error');
  const [own] = errors.filter(({ file }) => file === alone.main.file);
  if (own !== undefined) return { message: errorIn(what, own.message), at: behindBrace(own) };
  // What it sees has an error, which is told there.
  if (errors.length > 0) return undefined;
  // What is worked out for an example is no part of the job.
  const found = yield* judgedBy(rule, lowered.job!);
  const error = found.find(({ id, rule: by }) => by === undefined && FAULTS[id]?.severity === 'error');
  if (error !== undefined) return { message: errorIn(what, error.message) };
  const breach = found.find(({ rule: by }) => by !== undefined);
  if (what === 'right') return breach && { message: `This right example breaks the rule: ${breach.message}` };
  if (breach !== undefined) return undefined;
  return { message: `This wrong example does not break the rule: ${yield* whyKept(rule, lowered.job!)}` };
}

function* judgedBy(rule: Rule, job: Job): Generator<void, readonly RawFinding[]> {
  const { findings } = yield* judgeJob({ ...job, rules: [rule] }, new Session(), job.key);
  return findings;
}

/** Told wherever it applies, the rule shows whether it applies to anything at all. */
function* whyKept(rule: Rule, job: Job): Generator<void, string> {
  const cases = rule.cases.map(each => ({
    ...each,
    needs: each.needs.map(({ when }) => ({ ...(when === undefined ? {} : { when }), says: [] }))
  }));
  const applies = (yield* judgedBy({ ...rule, cases }, job)).some(({ rule: by }) => by !== undefined);
  return applies ? 'what it shows keeps the rule.' : 'the rule applies to nothing in it.';
}

function errorIn(what: RuleExample['what'], message: string): string {
  return `This ${what} example has an error of its own: ${message}`;
}

/** The job stands on a line of its own above the example. */
function behindBrace({ line, column, endLine, endColumn }: Place): Omit<Place, 'file'> {
  return { line: line - 1, column, endLine: endLine - 1, endColumn };
}

function findingOf({ rule, place, inside }: RuleExample, { message, at }: ExampleFault): Finding {
  const related =
    at === undefined
      ? []
      : [
          {
            file: place.file,
            line: at.line + inside.line - 1,
            column: at.line === 1 ? at.column + inside.column - 1 : at.column,
            endLine: at.endLine + inside.line - 1,
            endColumn: at.endLine === 1 ? at.endColumn + inside.column - 1 : at.endColumn,
            message: 'Here.'
          }
        ];
  const id = 'example-does-not-show';
  const { severity } = FAULTS[id]!;
  return { id, family: 'fault', severity, message, target: rule.key, ...place, values: [], related, fixes: [] };
}
