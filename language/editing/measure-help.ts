import { AMBIGUOUS_MEASURES, combine, MEASURES, measureNamed, type Measure } from '../measures/measures.ts';
import { help, type WordHelp } from './help/help.ts';
import { MEASURE_WORDS, type MeasureWords } from './help/measure-words.ts';

/** Help on a measure as written after a number, such as `sq ft` or `kg/m3`; undefined for what is none. */
export function measureHelp(spelling: string): WordHelp | undefined {
  if (AMBIGUOUS_MEASURES.has(spelling.toLowerCase())) return TON;
  const [above, below] = spelling.split('/');
  const [words, each] = [measureWords(above!), below === undefined ? undefined : measureWords(below)];
  if (words === undefined || (below !== undefined && each === undefined)) return undefined;
  return each === undefined ? ofOne(words) : ofRate(words, each);
}

/** The words for a measure, however it is spelled. */
export function measureWords(spelling: string): MeasureWords | undefined {
  const is = measureNamed(spelling);
  return is && MEASURE_WORDS.find(({ written }) => MEASURES.get(written) === is);
}

const TON = help(
  'A ton could be three weights: 2,000 lb, 2,240 lb or 1,000 kg',
  'Write `short ton` (2,000 lb) or `tonne` (1,000 kg).'
);

function ofOne({ written, words, compare }: MeasureWords): WordHelp {
  const is = MEASURES.get(written)!;
  const others = [...MEASURES].flatMap(([spelling, other]) => (other === is && spelling !== written ? [spelling] : []));
  return help(
    words,
    ...(compare === undefined ? [] : [comparison(written, is, compare, MEASURES.get(compare)!)]),
    ...(others.length === 0 ? [] : [`Also written: ${others.map(other => `\`${other}\``).join(', ')}.`])
  );
}

/** `kg/m3`. */
function ofRate(above: MeasureWords, below: MeasureWords): WordHelp {
  const line = `So many ${above.written} for each ${below.written}`;
  const is = measureNamed(`${above.written}/${below.written}`)!;
  const other = above.system === 'imperial' ? (['kg', 'm3'] as const) : (['lb', 'cu ft'] as const);
  const [mass, volume] = [MEASURES.get(other[0])!, MEASURES.get(other[1])!];
  const density: Measure = {
    dimensions: combine(mass.dimensions, volume.dimensions, -1),
    factor: mass.factor.div(volume.factor)
  };
  if (!sameKind(is, density)) return help(line);
  return help(line, comparison(`${above.written}/${below.written}`, is, other.join(' per '), density));
}

function sameKind(one: Measure, other: Measure): boolean {
  return JSON.stringify(one.dimensions) === JSON.stringify(other.dimensions);
}

/** `1 in is 25.4 mm`; four digits where it does not come out even. */
function comparison(written: string, is: Measure, other: string, measure: Measure): string {
  const ratio = is.factor.div(measure.factor).valueOf();
  const rounded = Number(ratio.toPrecision(4));
  const even = Math.abs(ratio - Number(ratio.toPrecision(6))) < ratio * 1e-9;
  return `1 ${written} is ${even ? Number(ratio.toPrecision(6)) : `about ${rounded}`} ${other}.`;
}
