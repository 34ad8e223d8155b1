import type { PrintStyle } from '../../measures/print.ts';
import { quantitiesOf, type Owner, type Quantity } from '../../quantities/catalogue.ts';
import type { AreaQuantities, JobQuantities } from '../../quantities/contract.ts';

/** In words which number a JSON pointer means: `terrace, base: Mass`. */
export function labelOf(pointer: string, quantities: JobQuantities): string {
  const { of, quantity, key } = partAt(pointer, quantities);
  return `${of}: ${quantity === undefined ? capital(key) : headOf(quantity)}`;
}

/** Words that only go on from the row above them say too little alone. */
function headOf({ words, name }: Quantity): string {
  const goesOn = words[0] !== words[0]?.toUpperCase();
  return goesOn ? capital(name) : words;
}

function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
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
  const thing = thingOf(quantities, parts);
  if (thing !== undefined) return { of: thing.name, quantity: quantityOf(thing.owner), key };
  if (parts[0] !== 'areas') {
    const { owner, name } = wholePartOf(quantities, parts);
    return { of: ['Whole job', ...(name === undefined ? [] : [name])].join(', '), quantity: quantityOf(owner), key };
  }
  const area = quantities.areas[Number(parts[1])]!;
  const { owner, name } = partOf(area, parts.slice(2, -1));
  return { of: [area.name, ...(name === undefined ? [] : [name])].join(', '), quantity: quantityOf(owner), key };
}

/** What stands in the job besides its areas, by its place in a list; undefined for any other list. */
function thingOf(quantities: JobQuantities, parts: readonly string[]): { owner: Owner; name: string } | undefined {
  const [list, index, , stretch] = parts;
  const at = Number(index);
  switch (list) {
    case 'boxes':
      return named('box', 'box', quantities.boxes?.[at]);
    case 'gates': {
      const gate = quantities.gates?.[at];
      return named('gate', gate?.kind ?? 'gate', gate);
    }
    case 'pipes':
      return named('pipe', 'pipe', quantities.pipes?.[at]);
    case 'drains':
      return named('drain', 'drain', quantities.drains?.[at]);
    case 'routes': {
      const route = named('route', 'route', quantities.routes?.[at]);
      if (route === undefined || stretch === undefined) return route;
      return { owner: 'stretch', name: `${route.name}, stretch ${Number(stretch) + 1}` };
    }
    default:
      return measuredOf(quantities, list, at);
  }
}

function named(
  owner: Owner,
  kind: string,
  thing: { readonly name: string } | undefined
): { owner: Owner; name: string } | undefined {
  return thing && { owner, name: `${kind} ${thing.name}` };
}

/** What was measured or delivered. */
function measuredOf(
  { tapes, heights, readings, gaps, slopes, deliveries }: JobQuantities,
  list: string | undefined,
  at: number
): { owner: Owner; name: string } | undefined {
  const [tape, height, reading] = [tapes?.[at], heights?.[at], readings?.[at]];
  const [gap, along, delivery] = [gaps?.[at], slopes?.[at], deliveries?.[at]];
  switch (list) {
    case 'tapes':
      return tape && { owner: 'tape', name: `tape ${tape.from} to ${tape.to}` };
    case 'heights':
      return height && { owner: 'measured-height', name: `${height.of} at ${height.at}` };
    case 'readings':
      return reading && { owner: 'reading', name: `${reading.layer} at ${reading.at}, ${reading.date}` };
    case 'gaps':
      return gap && { owner: 'gap', name: `gap under the straightedge, ${gap.date}` };
    case 'slopes':
      return along && { owner: 'slope', name: `slope along ${along.along}, ${along.date}` };
    case 'deliveries':
      return delivery && { owner: 'delivery', name: delivery.thing };
    default:
      return undefined;
  }
}

function wholePartOf(
  { materials, units, edging, needs = [], order = [], deliveryCharges = [] }: JobQuantities,
  [list, index, part, choice]: readonly string[]
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
    case 'needs': {
      const { item, choices } = needs[at]!;
      if (part !== 'choices') return { owner: 'need', name: item };
      return { owner: 'choice', name: `${item}, ${choices[Number(choice)]?.pack ?? ''}` };
    }
    case 'order':
      return { owner: 'order', name: `${order[at]!.item}, ${order[at]!.pack}` };
    case 'deliveryCharges':
      return { owner: 'delivery-charge', name: deliveryCharges[at]!.name };
    case 'orderCost':
      return { owner: 'totals', name: 'order' };
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
    case 'levels': {
      const { at: place, along } = area.levels![at]!;
      return { owner: 'level', name: along === undefined ? `at ${place}` : `at place ${at + 1}, on ${place}` };
    }
    case 'softSpots':
      return { owner: 'soft-spot', name: area.softSpots!.length === 1 ? 'soft spot' : `soft spot ${at + 1}` };
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
