import type { Area, Job, Layer } from '../../../job/job.ts';
import { printAs, printThickness } from '../../../measures/print.ts';
import type { AreaQuantities } from '../../../quantities/contract.ts';
import type { Colours } from '../colours.ts';
import { plainLine } from '../plain-line.ts';
import { table } from '../table.ts';
import { wrapped } from '../wrapped.ts';
import { SHEET_WIDTH } from './quote-input.ts';

/** Room for what is laid, behind its word. */
const ROOM = SHEET_WIDTH - 18;

/** What is laid, area by area and layer by layer: what two prices have to agree in before they can be compared. */
export function scopeText(job: Job, areas: readonly AreaQuantities[], colours: Colours): string[] {
  return areas.flatMap(quantities => {
    const area = job.areas.find(({ key }) => key === quantities.id);
    const size = printAs('area', quantities.netArea, job.system);
    const head = `${plainLine(quantities.name)}, ${size}`;
    const rows = area === undefined ? [] : rowsOf(area, quantities, job);
    const shown = rows.map(([word, text]) => [word, wrapped(plainLine(text), ROOM).join('\n')]);
    return [head, ...table([{ head: '' }, { head: '' }], shown, colours).map(line => `  ${line}`)];
  });
}

type Row = readonly [string, string];

function rowsOf(area: Area, quantities: AreaQuantities, { system }: Job): Row[] {
  const { traffic, paving, jointFiller, layers, geotextile } = area;
  const thick = (metres: number): string => printThickness(metres, system);
  const layerRow = ({ role, material, thickness }: Layer): Row => [
    LAYER_WORDS[role],
    `${material.name}, ${thickness.value === 0 ? 'none' : `${thick(thickness.value)} thick when finished`}`
  ];
  const units = [
    ...new Set((quantities.laying ?? []).map(({ unit, bond }) => (bond === '' ? unit : `${unit} in ${bond}`)))
  ];
  const filler = jointFiller === undefined ? '' : `, filled with ${jointFiller.name}`;
  const rows: (Row | undefined)[] = [
    traffic.length === 0 ? undefined : ['For', traffic.join(', ')],
    units.length === 0 ? undefined : ['Paving', units.join('; ')],
    paving === undefined ? undefined : ['Joints', `${printAs('joint', paving.joint.width.value, system)}${filler}`],
    ...layers.map(layerRow),
    geotextile === undefined ? undefined : ['Under it', `${geotextile.name}, geotextile`],
    ...quantities.edging.map(({ material, length }): Row => [
      'Edging',
      `${material}, ${printAs('length', length, system)}`
    ]),
    digRow(quantities.dig, thick, system)
  ];
  return rows.filter(row => row !== undefined);
}

const LAYER_WORDS: Readonly<Record<Layer['role'], string>> = { bed: 'Bed', base: 'Base', 'sub-base': 'Sub-base' };

function digRow(
  { bankVolume, shallowest, deepest }: AreaQuantities['dig'],
  thick: (metres: number) => string,
  system: Job['system']
): Row | undefined {
  if (bankVolume === undefined) return undefined;
  const volume = `${printAs('stone-volume', bankVolume, system)} as it lies in the ground`;
  if (shallowest === undefined || deepest === undefined) return ['Digging', volume];
  const [least, most] = [thick(shallowest), thick(deepest)];
  return ['Digging', `${volume}, ${least === most ? least : `${least} to ${most}`} deep`];
}
