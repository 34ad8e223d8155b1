import type { Material, System } from '../job/job.ts';
import type { NeedsInputs } from './needs.ts';
import { printAs, printThickness } from '../measures/print.ts';
import { isSize } from '../quantities/layer-volumes.ts';
import { isCurvePiece } from './offers.ts';
import { rollWidths, rollWidthSold, type SoldBy, type UsedThing } from './used.ts';

/** What is taken for granted of a need, in sentences that print beside it. */
export function assumptionsOf(
  { key, kind, material, parts, allowances, name }: UsedThing,
  measures: ReadonlySet<SoldBy>,
  { areas, concrete, drains, prices, system }: Pick<NeedsInputs, 'areas' | 'concrete' | 'drains' | 'prices' | 'system'>
): string[] {
  const said: string[] = [];
  if (material?.assumed !== undefined) said.push(`${name}: ${material.assumed.because}.`);
  const isConcrete = key === concrete.key;
  if (kind === 'material' && !isConcrete) {
    if (measures.has('kg') && !measures.has('m3'))
      said.push('Its loose density is not known: only what is sold by mass can be compared.');
    if (measures.has('m3') && !measures.has('kg'))
      said.push('Its densities are not known: only what is sold by volume can be compared.');
    if (measures.size === 0) said.push('Neither its mass nor its loose volume is known: give its densities.');
    // Joint filler comes dry and bagged.
    if (parts.some(({ work }) => work !== 'joints')) {
      if (allowances.moisture === undefined) said.push('Weighed dry: damp stone and sand weigh more for one volume.');
      if (allowances.settling === undefined) said.push('Nothing for what loose volume settles on the way.');
    }
  }
  if (kind !== 'unit' && kind !== 'spikes' && allowances.loss === undefined) said.push('Nothing for loss.');
  if (parts.some(({ work }) => work === 'joints')) {
    said.push('Joints are filled to the full thickness of the units.');
    if (material?.unbound === true && allowances.keptBack === undefined)
      said.push('Nothing kept back for the second sweeping.');
  }
  if (kind === 'geotextile' && material !== undefined) said.push(lapsText(material, prices, system));
  if (kind === 'edging' || kind === 'curve-pieces') said.push('Offcuts of edging are used on.');
  if (kind === 'curve-pieces') {
    const { name: edging, curvePieces } = material!;
    if (!prices.some(list => list.thing === material!.key && list.ways.some(way => isCurvePiece(way, material!))))
      said.push(
        `Pieces for the curves of ${edging} have no price: \`length of ${curvePieces!.written}\` tells it in the price of ${edging}.`
      );
  }
  if (kind === 'edging' && material?.curvePieces === undefined && isCurved(key, areas))
    said.push('Curves take the same pieces as straight sides.');
  if (isConcrete && areas.some(({ isBacked }) => isBacked))
    said.push('Concrete behind last courses is not counted: its size is not said.');
  if (isConcrete)
    for (const { name: drain, concrete: round, depth } of drains)
      if (round?.sides === true && depth === undefined)
        said.push(`Concrete beside ${drain} is counted below it alone: its depth is not said.`);
  return said;
}

function isCurved(key: string, areas: NeedsInputs['areas']): boolean {
  return areas.some(({ sides }) => sides.some(side => side.material === key && side.isCurved));
}

/** By which width of roll the laps of cloth are counted. */
function lapsText({ key, name, roll, lap }: Material, prices: NeedsInputs['prices'], system: System): string {
  const sold = rollWidths(key, prices);
  const one = rollWidthSold(key, prices);
  const width = one !== undefined && isSize(lap) && one.value > lap.value ? one : roll?.width;
  if (width === undefined || !isSize(lap) || width.value <= lap.value)
    return `${name}: its plain area, without laps: the width of the roll, or the lap, is not known.`;
  const others = sold.filter(({ value }) => value !== width.value);
  const wider = others.length === 0 ? '' : ' Rolls of another width are sold too: their laps come to more or less.';
  return `${name}: laps of ${printThickness(lap.value, system)} are counted for rolls ${printAs('length', width.value, system)} wide.${wider}`;
}
