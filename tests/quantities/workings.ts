import { CATALOGUE } from '../../language/quantities/catalogue.ts';
import { evaluateFormula, type PrintedWorking } from './evaluate-formula.ts';

interface Sources {
  readonly values: readonly { readonly from: object; readonly value: number }[];
}

/** Where an owner's objects stand in a job; `*` for each of a list. */
const PLACES: Readonly<Record<string, string>> = {
  area: '/areas/*',
  'kept-out': '/areas/*/keptOut/*',
  edge: '/areas/*/edges/*',
  finish: '/areas/*/finish',
  dig: '/areas/*/dig',
  layer: '/areas/*/layers/*',
  laying: '/areas/*/laying/*',
  'border-row': '/areas/*/borderRows/*',
  'running-size': '/areas/*/runningSizes/*',
  joints: '/areas/*/joints',
  edging: '/areas/*/edging/*',
  geotextile: '/areas/*/geotextile',
  'soft-spot': '/areas/*/softSpots/*',
  level: '/areas/*/levels/*',
  tape: '/tapes/*',
  'measured-height': '/heights/*',
  box: '/boxes/*',
  gate: '/gates/*',
  pipe: '/pipes/*',
  drain: '/drains/*',
  route: '/routes/*',
  stretch: '/routes/*/stretches/*',
  delivery: '/deliveries/*',
  reading: '/readings/*',
  gap: '/gaps/*',
  slope: '/slopes/*',
  'job-dig': '/dig',
  totals: '/totals',
  'job-material': '/materials/*',
  'job-unit': '/units/*',
  'job-edging': '/edging/*',
  need: '/needs/*/in/*',
  order: '/order/*',
  choice: '/needs/*/choices/*',
  'delivery-charge': '/deliveryCharges/*'
};

/** Money in the JSON, by pointer. */
function moneyAt(job: object, pointer: string): number | undefined {
  const found = pointer
    .split('/')
    .slice(1)
    .reduce<unknown>((holder, step) => (holder as Readonly<Record<string, unknown>> | undefined)?.[step], job);
  return typeof found === 'string' && /^-?\d+\.\d{2}$/.test(found) ? Number(found) : undefined;
}

/** Every number of a job by pointer, found by walking the catalogue over the job's JSON. */
function numbersIn(job: object, which: (computed: boolean) => boolean): Map<string, number> {
  const found = new Map<string, number>();
  for (const { owner, key, computed } of CATALOGUE) {
    if (!which(computed)) continue;
    for (const [pointer, holder] of objectsAt(job, PLACES[owner]!.split('/').slice(1), '')) {
      const value = (holder as Record<string, unknown>)[key];
      if (typeof value === 'number') found.set(`${pointer}/${key}`, value);
    }
  }
  return found;
}

function objectsAt(holder: unknown, path: readonly string[], pointer: string): [string, object][] {
  if (typeof holder !== 'object' || holder === null) return [];
  const [step, ...rest] = path;
  if (step === undefined) return [[pointer, holder]];
  if (step !== '*') return objectsAt((holder as Record<string, unknown>)[step], rest, `${pointer}/${step}`);
  return (holder as unknown[]).flatMap((one, index) => objectsAt(one, rest, `${pointer}/${index}`));
}

/**
 * What is wrong with the workings of a job: a number without working, a working without number, one that gives another
 * number, a value that differs from the quantity it is said to be, a bare name that is not measured on a shape.
 */
export function wrongWorkings(job: object, workings: Readonly<Record<string, PrintedWorking & Sources>>): string[] {
  const numbers = numbersIn(job, () => true);
  // What repeats the job as given needs no working, but may have one.
  const wrong = [...numbersIn(job, computed => computed).keys()]
    .filter(pointer => workings[pointer] === undefined)
    .map(pointer => `${pointer}: no working`);
  for (const [pointer, working] of Object.entries(workings)) {
    const value = numbers.get(pointer) ?? moneyAt(job, pointer);
    if (value === undefined) {
      wrong.push(`${pointer}: no number`);
      continue;
    }
    const again = evaluateFormula(working);
    if (!(Math.abs(again - value) <= 1e-12 * Math.max(1, Math.abs(value))))
      wrong.push(`${pointer}: ${working.formula} gives ${again}, not ${value}`);
    const [first] = working.values;
    if (
      working.values.length === 1 &&
      first !== undefined &&
      working.formula === working.values[0]!.name &&
      !('shape' in first.from)
    ) {
      wrong.push(`${pointer}: a name alone`);
    }
    for (const { from, value: put } of working.values) {
      if ('pointer' in from && (numbers.get(from.pointer as string) ?? moneyAt(job, from.pointer as string)) !== put)
        wrong.push(`${pointer}: ${String(from.pointer)} is not ${put}`);
    }
  }
  return wrong;
}
