import type { Job, System } from '../../../job/job.ts';
import { printAs, printLength } from '../../../measures/print.ts';
import { type LevelDatum, type LevelStyle, printDrop, printLevel } from '../../../measures/print-level.ts';
import type { JobQuantities } from '../../../quantities/contract.ts';
import { boxWorkText, stepText } from '../../site-words.ts';
import type { Colours } from '../colours.ts';
import { table } from '../table.ts';

interface Printing {
  readonly datum: LevelDatum;
  readonly style: LevelStyle;
  readonly system: System;
  readonly colours: Colours;
}

/** Boxes, gates and doors, drains, pipes and water of a job: a block of lines each, with its head. */
export function siteText(quantities: JobQuantities, job: Job, printing: Printing): [head: string, lines: string[]][] {
  const blocks: [string, string[]][] = [
    ['Boxes', boxesText(quantities, printing)],
    ['Gates and doors', gatesText(quantities, printing)],
    ['Drains', drainsText(quantities, printing)],
    ['Where the water goes', waterText(quantities, job, printing)],
    ['Under the paving, for the record', recordText(quantities, printing)],
    ['Measured', readingsText(quantities, printing)],
    ['Delivered', deliveriesText(quantities, printing)]
  ];
  return blocks.filter(([, lines]) => lines.length > 0);
}

function boxesText({ boxes }: JobQuantities, { datum, style, colours }: Printing): string[] {
  const rows = (boxes ?? []).flatMap(box => {
    if (box.lid === undefined) return [];
    return [
      [
        box.name,
        box.inUse === undefined ? '' : box.inUse ? 'in use' : 'out of use',
        printLevel(box.lid, datum, style),
        box.finish === undefined ? '' : printLevel(box.finish, datum, style),
        boxWorkText(box, style)
      ]
    ];
  });
  return table(
    ['Box', '', 'Lid today', 'Finish there', 'What to do'].map((head, index) => ({
      head,
      right: index === 2 || index === 3
    })),
    rows,
    colours
  );
}

function gatesText({ gates }: JobQuantities, { datum, style, colours }: Printing): string[] {
  const rows = (gates ?? []).map(gate => {
    const { underside, highestFinish, shutClearance, clearance, trim, sillStep, kind, name } = gate;
    const trimmed = trim === undefined || trim <= 0 ? '' : `trim ${printDrop(roundedUp(trim, style), style)}`;
    const step = sillStep === undefined ? '' : stepText(sillStep, style);
    return [
      `${kind} ${name}`,
      underside === undefined ? '' : printLevel(underside, datum, style),
      highestFinish === undefined ? '' : printLevel(highestFinish, datum, style),
      shutClearance === undefined ? '' : signed(shutClearance, style),
      clearance === undefined ? '' : signed(clearance, style),
      [trimmed, step].filter(text => text !== '').join(', ')
    ];
  });
  const heads = ['', 'Underside', 'Highest finish', 'Clears shut by', 'Clears all the way by', ''];
  return table(
    heads.map((head, index) => ({ head, right: index > 0 && index < 5 })),
    rows,
    colours
  );
}

function signed(clearance: number, style: LevelStyle): string {
  return clearance < 0 ? `${printDrop(-clearance, style)} too low` : printDrop(clearance, style);
}

/** What is cut off is never cut short: up to the next whole step of the tape. */
function roundedUp(size: number, style: LevelStyle): number {
  const step = style === 'inches' ? 0.0254 / 16 : style === 'millimetres' ? 0.001 : 0.003048;
  return Math.ceil(size / step - 1e-6) * step;
}

function drainsText({ drains }: JobQuantities, { datum, style, system, colours }: Printing): string[] {
  const rows = (drains ?? []).map(({ name, grate, finishAbove, drained }) => [
    name,
    grate === undefined ? '' : printLevel(grate, datum, style),
    finishAbove === undefined ? '' : printDrop(finishAbove, style),
    printAs('area', drained, system)
  ]);
  const lines = table(
    ['Drain', 'Grate', 'Finish above it', 'Takes water of'].map((head, index) => ({ head, right: index > 0 })),
    rows,
    colours
  );
  return lines.length === 0 ? [] : [...lines, 'The areas are added up; no drain is sized here.'];
}

/** All paving is told once: over the side that its water leaves it by, or where that stays. */
function waterText({ water }: JobQuantities, { areas }: Job, { system, colours }: Printing): string[] {
  const rows = (water ?? []).flatMap(({ area, over, lowPlaces, tolerance }) => {
    const name = areas.find(({ key }) => key === area)?.name ?? '';
    const about = tolerance > 0 ? 'about ' : '';
    return [
      ...sidesTogether(over.map(one => ({ ...one, drained: one.drained - (one.stays ?? 0) })))
        .filter(({ drained }) => drained > LEAST_DRAINED)
        .map(({ side, meets, drained }) => [
          name,
          `over ${side}${meets === undefined ? '' : `, ${meets}`}`,
          about + printAs('area', drained, system)
        ]),
      ...lowPlaces.map(({ x, y, drained }) => [
        name,
        `stays in a low place at (${printLength(x, system)}, ${printLength(y, system)})`,
        about + printAs('area', drained, system)
      ])
    ];
  });
  return table([{ head: 'Area' }, { head: 'Runs' }, { head: 'From', right: true }], rows, colours);
}

/** The parts of a rounded or measured side share its name. */
function sidesTogether<T extends { readonly side: string; readonly drained: number }>(over: readonly T[]): T[] {
  const sides = new Map<string, T>();
  for (const one of over) {
    const before = sides.get(one.side);
    sides.set(one.side, before === undefined ? one : { ...before, drained: before.drained + one.drained });
  }
  return [...sides.values()];
}

/** Less is a crumb that nobody sees run, m2. */
const LEAST_DRAINED = 0.05;

function recordText({ boxes, pipes }: JobQuantities, { system, style, colours }: Printing): string[] {
  const tapes = (all: readonly { readonly point: string; readonly distance: number }[]): string =>
    all.map(({ point, distance }) => `${printLength(distance, system)} from ${point}`).join(', ');
  const rows = [
    ...(boxes ?? []).map(box => [
      `box ${box.name}`,
      box.buried ? 'out of use, cut down and buried' : box.inUse === true ? 'in use' : '',
      tapes(box.tapedFrom)
    ]),
    ...(pipes ?? []).flatMap(pipe => {
      const depth = pipe.belowDig === undefined ? '' : depthText(pipe.belowDig, style);
      const carries = pipe.carries === undefined ? '' : `carries ${pipe.carries}`;
      const proof = pipe.proven ? '' : 'depth not proven';
      const what = [carries, depth, proof].filter(text => text !== '').join(', ');
      const ends = [...new Set(pipe.tapedFrom.map(({ of }) => of))];
      return ends.map((end, index) => [
        index === 0 ? `pipe ${pipe.name}` : '',
        index === 0 ? what : '',
        `${end}: ${tapes(pipe.tapedFrom.filter(({ of }) => of === end))}`
      ]);
    })
  ];
  return table([{ head: '' }, { head: '' }, { head: 'Taped' }], rows, colours);
}

function depthText(belowDig: number, style: LevelStyle): string {
  const size = printDrop(Math.abs(belowDig), style);
  return belowDig < 0 ? `by its stated depth ${size} within the dig` : `by its stated depth ${size} under the dig`;
}

function readingsText({ readings }: JobQuantities, { datum, style, colours }: Printing): string[] {
  const rows = (readings ?? []).map(({ date, layer, at, measured, design, above }) => {
    const size = printDrop(Math.abs(above), style);
    const off = Number.parseFloat(size) === 0 ? 'as designed' : `${size} ${above > 0 ? 'high' : 'low'}`;
    return [date, layer, at, printLevel(measured, datum, style), printLevel(design, datum, style), off];
  });
  const heads = ['Day', 'What', 'At', 'Measured', 'Design', ''];
  return table(
    heads.map((head, index) => ({ head, right: index === 3 || index === 4 })),
    rows,
    colours
  );
}

function deliveriesText({ deliveries }: JobQuantities, { system, colours }: Printing): string[] {
  const rows = (deliveries ?? []).map(({ thing, measure, delivered, needed, short }) => {
    const print = (amount: number | undefined): string =>
      amount === undefined ? '' : printAs(AMOUNTS[measure], amount, system);
    const over = short !== undefined && short < 0 ? `${print(-short)} over` : print(short);
    return [thing, print(delivered), print(needed), over];
  });
  return table(
    ['', 'Delivered', 'Needed', 'Still to come'].map((head, index) => ({ head, right: index > 0 })),
    rows,
    colours
  );
}

const AMOUNTS = { kg: 'mass', m3: 'stone-volume', m2: 'area', m: 'length', '': 'count' } as const;
