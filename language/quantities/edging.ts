import type { Edge, Material } from '../job/job.ts';
import { divide, type Expression, given, measured, multiply, plainNumber, roundedUp, sum } from './arithmetic.ts';
import type { EdgingQuantities } from './contract.ts';
import { isSize } from './layer-volumes.ts';
import type { Book } from './page.ts';

/** A side with its length, m. */
interface EdgedSide {
  readonly edge: Edge;
  readonly material: Material;
  readonly length: Expression;
}

/** Sides that follow each other with the same edging. */
interface Run {
  readonly sides: readonly EdgedSide[];
  /** It goes all round and meets itself. */
  readonly closed: boolean;
}

/** Edging of an area, one entry a material in the order of its sides. */
export function edgingOf(edges: readonly Edge[], lengths: readonly number[], book: Book): EdgingQuantities[] {
  const runs = runsOf(edges, lengths);
  const materials = new Map(runs.map(run => [run.sides[0]!.material.key, run.sides[0]!.material]));
  return [...materials.values()].map((material, index) => {
    const ofMaterial = runs.filter(run => run.sides[0]!.material.key === material.key);
    return edgingOfMaterial(material, ofMaterial, `/edging/${index}`, book);
  });
}

function edgingOfMaterial(material: Material, runs: readonly Run[], at: string, book: Book): EdgingQuantities {
  const page = book.page('edging', at);
  const length = page.put('length', total(runs.map(lengthOf)));
  if (isSize(material.spikesEvery)) {
    const spacing = given('spacing of the spikes', material.spikesEvery, 'm');
    page.put('spikes', total(runs.map(run => spikesOf(run, spacing))));
  }
  const section = concreteSection(material);
  if (section !== undefined) page.put('concreteVolume', multiply(section, length));
  return { material: material.name, ...page.numbers };
}

/** One spike for each spacing begun, and one more where a run has two ends. */
function spikesOf(run: Run, spacing: Expression): Expression {
  const spaces = roundedUp(divide(lengthOf(run), spacing));
  return run.closed ? spaces : sum(spaces, plainNumber(1));
}

/** Section of the concrete below and behind the edging, m2. */
function concreteSection({ concrete, haunch }: Material): Expression | undefined {
  const sections: Expression[] = [];
  if (concrete !== undefined) {
    sections.push(multiply(given('concrete width', concrete.width, 'm'), given('concrete depth', concrete.depth, 'm')));
  }
  if (haunch !== undefined) {
    sections.push(multiply(given('haunch width', haunch.width, 'm'), given('haunch height', haunch.height, 'm')));
  }
  return sections.length === 0 ? undefined : total(sections);
}

function lengthOf(run: Run): Expression {
  return total(run.sides.map(side => side.length));
}

function total(parts: readonly Expression[]): Expression {
  const [first, ...others] = parts;
  return sum(first!, ...others);
}

function runsOf(edges: readonly Edge[], lengths: readonly number[]): Run[] {
  const start = edges.findIndex((edge, index) => edge.edging?.key !== edges.at(index - 1)?.edging?.key);
  const closed = start === -1;
  const runs: { sides: EdgedSide[]; closed: boolean }[] = [];
  let before: string | undefined;
  for (let step = 0; step < edges.length; step++) {
    const index = (Math.max(start, 0) + step) % edges.length;
    const edge = edges[index]!;
    if (edge.edging !== undefined) {
      const length = measured(`length of ${edge.name}`, lengths[index]!, 'm', edge.key);
      const side = { edge, material: edge.edging, length };
      if (edge.edging.key === before) runs.at(-1)!.sides.push(side);
      else runs.push({ sides: [side], closed });
    }
    before = edge.edging?.key;
  }
  return runs;
}
