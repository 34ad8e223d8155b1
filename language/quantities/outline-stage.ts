import { areaOf, perimeterOf, sideLength } from '../geometry/index.ts';
import type { Area, Inset, System } from '../job/job.ts';
import { type Expression, measured, subtract, sum } from './arithmetic.ts';
import type { NumbersOf } from './catalogue.ts';
import type { Workings } from './contract.ts';
import { Book } from './page.ts';

/** What the outline stage reads of an area. */
export interface OutlineInputs {
  readonly system: System;
  readonly key: Area['key'];
  readonly name: string;
  readonly outline: Area['outline'];
  readonly sides: readonly { readonly key: string; readonly name: string; readonly said: boolean }[];
  readonly keptOut: Area['keptOut'];
  readonly insets: readonly Pick<Inset, 'key' | 'name' | 'outline'>[];
}

export interface OutlineNumbers {
  readonly area: NumbersOf<'area'>;
  readonly keptOut: readonly NumbersOf<'kept-out'>[];
  readonly edgeLengths: readonly { readonly length: number }[];
  readonly workings: Workings;
}

export function outlineInputs(area: Area, system: System): OutlineInputs {
  const { key, name, outline, keptOut } = area;
  const sides = area.edges.map(edge => ({ key: edge.key, name: edge.name, said: edge.meets !== undefined }));
  const insets = area.insets.map(inset => ({ key: inset.key, name: inset.name, outline: inset.outline }));
  return { system, key, name, outline, sides, keptOut, insets };
}

/** Areas, perimeter and lengths of the sides, measured on an outline without faults. */
export function outlineStage(inputs: OutlineInputs): OutlineNumbers {
  const book = new Book();
  const page = book.page('area', '');
  const gross = page.put('grossArea', measured('gross area', areaOf(inputs.outline), 'm2', inputs.key));
  const shapes = inputs.keptOut.map((shape, index) => {
    const shapePage = book.page('kept-out', `/keptOut/${index}`);
    const area = shapePage.put('area', measured('kept-out area', areaOf(shape.outline), 'm2', shape.key));
    return { area, numbers: shapePage.numbers };
  });
  page.put(
    'netArea',
    subtract(
      gross,
      keptOutTogether(
        inputs.key,
        shapes.map(shape => shape.area)
      )
    )
  );
  page.put('perimeter', measured('perimeter', perimeterOf(inputs.outline), 'm', inputs.key));
  const edgeLengths = inputs.sides.map(({ key }, index) => {
    const edgePage = book.page('edge', `/edges/${index}`);
    const side = inputs.outline[index]!;
    edgePage.put('length', measured('length of the side', sideLength(side), 'm', key));
    return { length: sideLength(side) };
  });
  return {
    area: page.numbers,
    keptOut: shapes.map(shape => shape.numbers),
    edgeLengths,
    workings: book.workings
  };
}

/** Area of all kept-out shapes of an area; nought, measured, where there is none. */
export function keptOutTogether(areaKey: string, areas: readonly Expression[]): Expression {
  const [first, ...others] = areas;
  return first === undefined ? measured('kept-out area', 0, 'm2', areaKey) : sum(first, ...others);
}
