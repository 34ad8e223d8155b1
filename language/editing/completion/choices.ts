import { CONCERNS } from '../../findings/members/members.ts';
import { RATE_WORDS, TASK_WORDS, type TaskWord } from '../../job/work.ts';
import type { Country, System } from '../../job/job.ts';
import { CARRIED } from '../../lowering/pipes.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
const SHARES_OF = ['materials', 'labour', 'costs'];

/** Those that are mostly meant, then all others in the order of the trade. */
function tasksFrom(...usual: readonly TaskWord[]): readonly TaskWord[] {
  return [...usual, ...TASK_WORDS.filter(word => !usual.includes(word))];
}

/** The words that can stand in a property, the usual one first; a statement's word stands before it where they differ by that. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
  'JobShow.system': ['feet-and-inches', 'metric'],
  'JobCurrency.code': ['USD', 'CAD', 'GBP', 'EUR', 'AUD', 'NZD'],
  'SheetPrinted.style': ['inches', 'millimetres', 'decimal-feet'],
  'Heights.tool': ['laser', 'dumpy-level'],
  'Outlet.to': ['soakaway', 'rain-drain', 'ditch'],
  'Outlet.load': ['A15', 'B125', 'C250'],
  'PipeCarries.what': CARRIED,
  'Done.stage': ['dig', 'geotextile', 'edging', 'sub-base', 'base', 'bed', 'paving', 'joints'],
  'Measured.layer': ['base', 'sub-base', 'dig', 'bed', 'as-laid', 'finish'],
  'SoilFact.word': ['poorly-drained', 'well-drained'],
  'SiteWinters.kind': ['freeze', 'mild'],
  'MadeOf.what': ['concrete', 'clay'],
  'UnitShape.word': ['hexagon', 'rectangle'],
  'Border.course': ['soldier-course', 'sailor-course'],
  'Band.course': ['soldier-course', 'sailor-course'],
  'RoleItem.roles': [
    ...['base', 'sub-base', 'bed', 'joint-filler', 'edging', 'geotextile', 'concrete', 'fixing'],
    ...['unbound', 'bound']
  ],
  'PriceTax.way': ['added', 'included'],
  'Grading.word': ['dense', 'open', 'grit'],
  'drains SoilWord.word': ['well', 'poorly'],
  'frost-heave SoilWord.word': ['likely', 'unlikely'],
  'ground SideItem.word': ['open', 'closed'],
  'holds SideItem.word': ['nothing', 'paving'],
  'Traffic.kinds': ['foot', 'cars', 'trucks', 'turning'],
  'Step.direction': ['right', 'up', 'left', 'down'],
  'SourceKind.kind': ['standard', 'code', 'association-guidance', 'handbook', 'common-practice', 'memory'],
  'RuleSeverity.severity': ['warning', 'error', 'note'],
  'Treated.severity': ['note', 'warning', 'error'],
  'RuleConcerns.kind': CONCERNS,
  'RuleCites.how': ['from-memory', 'as-quoted'],
  'CrewClause.first': DAYS,
  'CrewClause.last': [...DAYS.slice(4), ...DAYS.slice(0, 4)],
  'CrewClause.days': [...DAYS.slice(5), ...DAYS.slice(0, 5)].map(day => `${day}s`),
  'TaskName.word': tasksFrom('dig', 'base', 'laying'),
  'JobHire.by': ['day', 'week'],
  'JobHire.tasks': tasksFrom('base', 'vibrating', 'dig'),
  'JobContingency.of': SHARES_OF,
  'JobExtra.of': SHARES_OF,
  'RateOf.tasks': tasksFrom('laying'),
  'RateIncludes.tasks': tasksFrom('bed', 'joints'),
  'RateWhen.words': RATE_WORDS
};

/** Choice words at a property, those first that fit the job; undefined where any word may stand. */
export function choicesAt(
  path: readonly string[],
  statement: string,
  { country, system }: { readonly country: Country; readonly system: System }
): readonly string[] | undefined {
  const property = path.at(-1);
  if (property === undefined) return undefined;
  const words = CHOICES[`${statement} ${property}`] ?? CHOICES[property];
  const first = [country, system === 'metric' ? 'metric' : 'feet-and-inches', country === 'britain' ? 'GBP' : 'USD'];
  return words && [...words.filter(word => first.includes(word)), ...words.filter(word => !first.includes(word))];
}
