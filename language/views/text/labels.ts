import type { PrintStyle } from '../../measures/print.ts';
import { quantitiesOf, type Owner, type Quantity } from '../../quantities/catalogue.ts';
import type { AreaQuantities, JobQuantities } from '../../quantities/contract.ts';

/** In words which number a JSON pointer means: `terrace, base: Mass`. */
export function labelOf(pointer: string, quantities: JobQuantities): string {
  const { of, quantity, key } = partAt(pointer, quantities);
  return `${of}: ${quantity?.words ?? key}`;
}

/** How the tables print the number that a JSON pointer means. */
export function styleOf(pointer: string, quantities: JobQuantities): PrintStyle | undefined {
  return partAt(pointer, quantities).quantity?.print;
}

/** What a number is of, `terrace, base`, and its quantity. */
function partAt(
  pointer: string,
  quantities: JobQuantities
): { of: string; quantity: Quantity | undefined; key: string } {
  const parts = pointer.split('/').slice(1);
  const key = parts.at(-1)!;
  const quantityOf = (owner: Owner): Quantity | undefined => quantitiesOf(owner).find(quantity => quantity.key === key);
  if (parts[0] !== 'areas') {
    const { owner, name } = wholePartOf(quantities, parts);
    return { of: ['Whole job', ...(name === undefined ? [] : [name])].join(', '), quantity: quantityOf(owner), key };
  }
  const area = quantities.areas[Number(parts[1])]!;
  const { owner, name } = partOf(area, parts.slice(2, -1));
  return { of: [area.name, ...(name === undefined ? [] : [name])].join(', '), quantity: quantityOf(owner), key };
}

function wholePartOf(
  { materials, units, edging }: JobQuantities,
  [list, index]: readonly string[]
): { owner: Owner; name?: string } {
  const at = Number(index);
  switch (list) {
    case 'materials':
      return { owner: 'job-material', name: `${materials[at]!.material} as ${materials[at]!.role}` };
    case 'units':
      return { owner: 'job-unit', name: units[at]!.unit };
    case 'edging':
      return { owner: 'job-edging', name: edging[at]!.material };
    case 'dig':
      return { owner: 'job-dig' };
    default:
      return { owner: 'totals' };
  }
}

function partOf(area: AreaQuantities, [list, index]: readonly string[]): { owner: Owner; name?: string } {
  const at = Number(index);
  switch (list) {
    case 'keptOut':
      return { owner: 'kept-out', name: area.keptOut[at]!.id.replace(':', ' ') };
    case 'edges':
      return { owner: 'edge', name: area.edges[at]!.name };
    case 'layers':
      return { owner: 'layer', name: area.layers[at]!.role };
    case 'laying':
      return { owner: 'laying', name: area.laying![at]!.unit };
    case 'borderRows':
      return { owner: 'border-row', name: `row ${at + 1} of the borders` };
    case 'runningSizes':
      return { owner: 'running-size', name: `course or unit ${area.runningSizes![at]!.courses}` };
    case 'edging':
      return { owner: 'edging', name: area.edging[at]!.material };
    case 'dig':
    case 'finish':
    case 'joints':
    case 'geotextile':
      return { owner: list };
    default:
      return { owner: 'area' };
  }
}
