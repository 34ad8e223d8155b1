import { levelStyleOf } from '../../measures/print-level.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import type { BoxQuantities, DrainQuantities, GateQuantities } from '../../quantities/site-contract.ts';
import { gateText } from '../lenses.ts';
import { boxWorkText, stepText } from '../site-words.ts';
import { type ContentRow, type Contents, group, numberRow, numbersOf, placeOf } from './content-row.ts';

/** Boxes, gates and doors, and drains: what is to be done with each, and its numbers. */
export function siteRows(contents: Contents, { boxes = [], gates = [], drains = [] }: JobQuantities): ContentRow[] {
  return [
    ...group(
      'boxes',
      'Boxes',
      boxes.map(box => boxRow(contents, box))
    ),
    ...group(
      'gates',
      'Gates and doors',
      gates.map(gate => gateRow(contents, gate))
    ),
    ...group(
      'drains',
      'Drains',
      drains.map(drain => drainRow(contents, drain))
    )
  ];
}

function boxRow(contents: Contents, box: BoxQuantities): ContentRow {
  const { id, name } = box;
  const work = boxWorkText(box, levelStyleOf(contents.job.system));
  const place = placeOf(contents, id);
  return {
    id,
    kind: 'box',
    label: name,
    ...(work === '' ? {} : { value: work }),
    ...place,
    inside: [
      ...(work === '' ? [] : [numberRow(`${id}#work`, 'What to do', work, place)]),
      ...numbersOf(contents, { id, key: id, owner: 'box', numbers: box })
    ]
  };
}

function gateRow(contents: Contents, gate: GateQuantities): ContentRow {
  const { id, kind, name } = gate;
  return {
    id,
    kind: 'gate',
    label: `${kind} ${name}`,
    ...gateValue(contents, gate),
    ...placeOf(contents, id),
    inside: numbersOf(contents, { id, key: id, owner: 'gate', numbers: gate })
  };
}

/** Of a door of whose leaf nothing is told, the step at its sill. */
function gateValue({ job: { system } }: Contents, gate: GateQuantities): { readonly value?: string } {
  if (gate.clearance !== undefined || gate.overPaving !== undefined) return { value: gateText(gate, system) };
  return gate.sillStep === undefined ? {} : { value: stepText(gate.sillStep, levelStyleOf(system)) };
}

function drainRow(contents: Contents, drain: DrainQuantities): ContentRow {
  const { id, name } = drain;
  const numbers = numbersOf(contents, { id, key: id, owner: 'drain', numbers: drain });
  const drained = numbers.find(row => row.id === `${id}#drained`);
  return {
    id,
    kind: 'drain',
    label: name,
    ...(drained?.value === undefined ? {} : { value: `takes water of ${drained.value}` }),
    ...placeOf(contents, id),
    inside: numbers
  };
}
