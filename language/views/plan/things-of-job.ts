import { circleLoop, distance, radiusOf, type Side, turnedAbout, middleOf } from '../../geometry/index.ts';
import type { Drain, Gate, NamedLine, Pipe } from '../../job/heights.ts';
import type { Area, Job, KeptOut, System } from '../../job/job.ts';
import { printLength, printMarked, printThickness, roundedUp } from '../../measures/print.ts';
import { deepestCut } from '../../quantities/boxes.ts';
import type { JobQuantities } from '../../quantities/contract.ts';
import type { PlanThing } from './plan-site.ts';

/** What stands or lies in the job besides areas and what is kept out of them. */
export function thingsOfJob(job: Job, quantities: JobQuantities): PlanThing[] {
  const { system } = job;
  return [
    ...job.areas.flatMap(area => [...softSpots(area, system), ...oldPaving(area, system)]),
    ...job.boxes.flatMap(box => [...noDig(box, system), ...buriedBox(box, quantities, system)]),
    ...job.drains.flatMap(drain => [drainThing(drain), ...outletThing(drain)]),
    ...job.pipes.flatMap(pipe => pipeThing(pipe, system)),
    ...breakLines(job),
    ...job.routes.flatMap(({ key, name, line }) => lineThing('route', { key, name, sides: line })),
    ...job.sections.flatMap(section => lineThing('section', section)),
    ...job.gates.flatMap(gate => [...leafThing(gate), ...doorThing(gate)]),
    ...setOutPoints(quantities)
  ];
}

function softSpots({ name, softSpots: spots }: Area, system: System): PlanThing[] {
  return spots.map(({ key, outline, deeper, material }): PlanThing => {
    const depth = `${printThickness(deeper.value, system)} deeper`;
    const filled = material === undefined ? '' : `, filled with ${material.name}`;
    return {
      key,
      kind: 'soft spot',
      name: 'soft spot',
      parts: [{ ink: 'soft-spot', loop: outline }],
      dots: [],
      labels: [`soft spot, ${depth}`, 'soft spot'],
      labelled: { beside: middleOf(outline) },
      told: `soft spot in ${name}: ${depth}${filled}`
    };
  });
}

function oldPaving({ brokenOut }: Area, system: System): PlanThing[] {
  return brokenOut.map(({ key, name, outline, thickness }): PlanThing => ({
    key: `${key}/broken-out`,
    kind: 'old paving',
    name,
    parts: [{ ink: 'broken-out', loop: outline }],
    dots: [],
    labels: [`break out ${name}`],
    labelled: { beside: middleOf(outline) },
    told: `${name}, broken out: ${printThickness(thickness.value, system)} thick`
  }));
}

function noDig({ key, kind, name, outline, noDig: radius }: KeptOut, system: System): PlanThing[] {
  if (radius === undefined || !(radius.value > 0)) return [];
  const within = `no dig within ${printLength(radius.value, system)}`;
  return [
    {
      key: `${key}/no-dig`,
      kind: 'no dig',
      name,
      parts: [{ ink: 'no-dig', loop: circleLoop(middleOf(outline), radius.value) }],
      dots: [],
      labels: [],
      labelled: { beside: middleOf(outline) },
      told: `${kind} ${name}: ${within} of its middle`
    }
  ];
}

/** A box that is cut down is kept out of nothing: it is drawn as what lies below. */
function buriedBox({ key, name, outline, use }: KeptOut, quantities: JobQuantities, system: System): PlanThing[] {
  if (!use?.buried) return [];
  const cutDown = deepestCut(quantities.boxes?.find(({ id }) => id === key));
  const by = cutDown === undefined ? '' : ` at least ${printMarked(roundedUp(cutDown, system), system)}`;
  return [
    {
      key: `${key}/buried`,
      kind: 'buried box',
      name,
      parts: [{ ink: 'below', loop: outline }],
      dots: [],
      labels: [`box ${name}, cut down${by}`, `box ${name}`],
      labelled: { beside: middleOf(outline) },
      told: `box ${name}, out of use: cut down${by} and buried`
    }
  ];
}

function drainThing({ key, name, kind, outline, line }: Drain): PlanThing {
  const where = line === undefined ? '' : ` along ${line.fromName} to ${line.toName}`;
  return {
    key: `${key}/shape`,
    kind,
    name,
    parts: [{ ink: 'drain', loop: outline }],
    dots: [],
    labels: [`${kind} ${name}`, name],
    labelled: line === undefined ? { beside: middleOf(outline) } : { along: { from: line.from, to: line.to } },
    told: `${kind} ${name}${where}`
  };
}

function outletThing({ key, name, outlet }: Drain): PlanThing[] {
  if (outlet === undefined) return [];
  const to = outlet.to === undefined ? '' : ` to ${outlet.to}`;
  const loadClass = outlet.loadClass === undefined ? '' : `, class ${outlet.loadClass}`;
  return [
    {
      key: `${key}/outlet`,
      kind: 'outlet',
      name,
      parts: [],
      dots: [outlet.at],
      labels: [`outlet${to}${loadClass}`, `outlet${to}`, 'outlet'],
      labelled: { beside: outlet.at },
      told: `outlet of ${name} at ${outlet.name}${to}${loadClass}`
    }
  ];
}

function pipeThing(pipe: Pipe, system: System): PlanThing[] {
  const { key, name, line, carries } = pipe;
  const sides = line.slice(1).map(({ at }, index): Side => ({ from: line[index]!.at, to: at }));
  const [longest] = [...sides].sort((a, b) => distance(b.from, b.to) - distance(a.from, a.to));
  if (longest === undefined) return [];
  const what = carries === undefined || carries === name ? name : `${name} (${carries})`;
  const depth = depthText(pipe, system);
  return [
    {
      key: `${key}/line`,
      kind: 'pipe',
      name,
      parts: [{ ink: 'pipe', sides }],
      dots: [],
      labels: [`${what}: ${depth}`, what, name],
      labelled: { along: longest },
      told: `pipe ${what} from ${line[0]!.name} to ${line.at(-1)!.name}: ${depth}`
    }
  ];
}

/** `about 10 in deep, depth not proven` */
export function depthText(pipe: Pipe, system: System): string {
  return shortDepth(pipe, system).replace(', not proven', ', depth not proven');
}

/** The same where room is short: `about 10 in deep, not proven`. */
export function shortDepth({ depth, about, proven }: Pipe, system: System): string {
  if (depth === undefined) return 'depth not known';
  return `${about ? 'about ' : ''}${printThickness(depth.value, system)} deep${proven ? '' : ', not proven'}`;
}

function breakLines({ areas }: Job): PlanThing[] {
  const lines = new Set(areas.flatMap(({ site }) => site.heights?.breakLines ?? []));
  return [...lines].flatMap((line, index): PlanThing[] => {
    const sides = line.slice(1).map((to, at): Side => ({ from: line[at]!, to }));
    return sides[0] === undefined
      ? []
      : [
          {
            key: `break-line/${index + 1}`,
            kind: 'break line',
            name: 'break line',
            parts: [{ ink: 'break-line', sides }],
            dots: [],
            labels: [],
            labelled: { along: sides[0] },
            told: 'break line of the ground'
          }
        ];
  });
}

function lineThing(kind: 'route' | 'section', { key, name, sides }: NamedLine): PlanThing[] {
  const [first, last] = [sides[0], sides.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [
    {
      key: `${key}/line`,
      kind,
      name,
      parts: [{ ink: kind, sides }],
      dots: [],
      labels: kind === 'section' ? [name] : [`route ${name}`, name],
      labelled: kind === 'section' ? { ends: [first, last] } : { along: first },
      told: `${kind} ${name}`
    }
  ];
}

/** The leaf shut, the way its end takes, and the leaf open. */
function leafThing({ key, name, kind, leaf }: Gate): PlanThing[] {
  if (leaf === undefined) return [];
  const { hinge, end } = leaf;
  const turn = (leaf.turn * Math.PI) / 180;
  const open = turnedAbout(end, hinge, turn);
  const swing: Side = { from: end, to: open, arc: { centre: hinge, turn } };
  const moves = turn !== 0 && radiusOf(swing, swing.arc!) > 0;
  return [
    {
      key: `${key}/leaf`,
      kind,
      name,
      parts: [
        ...(moves ? ([{ ink: 'swing', sides: [swing, { from: open, to: hinge }] }] as const) : []),
        { ink: 'leaf', sides: [{ from: hinge, to: end }] }
      ],
      dots: [hinge],
      labels: [`${kind} ${name}`, name],
      labelled: { beside: { x: (hinge.x + end.x) / 2, y: (hinge.y + end.y) / 2 } },
      told: `${kind} ${name}, its leaf ${leaf.length.written} long, opening ${leaf.opens.written}`
    }
  ];
}

function doorThing({ key, name, kind, opening }: Gate): PlanThing[] {
  if (opening === undefined) return [];
  const { from, to } = opening;
  return [
    {
      key: `${key}/opening`,
      kind: 'door',
      name,
      parts: [{ ink: 'leaf', sides: [{ from, to }] }],
      dots: [],
      labels: [`${kind} ${name}`, name],
      labelled: { beside: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 } },
      told: `${kind} ${name}`
    }
  ];
}

function setOutPoints({ areas }: JobQuantities): PlanThing[] {
  return areas.flatMap(({ id, offsetPoints }) =>
    (offsetPoints ?? []).map(({ at, x, y }, index): PlanThing => ({
      key: `${id}/set-out/${index + 1}`,
      kind: 'set-out point',
      name: at,
      parts: [],
      dots: [{ x, y }],
      labels: [],
      labelled: { beside: { x, y } },
      told: `set-out point ${at}`
    }))
  );
}

/** How the lid of a box is changed; undefined where nothing is known of it. */
export function lidText({ key }: KeptOut, { boxes }: JobQuantities, system: System): string | undefined {
  const change = boxes?.find(({ id }) => id === key)?.change;
  if (change === undefined) return undefined;
  const size = printMarked(Math.abs(change), system);
  if (Number.parseFloat(size) === 0) return 'lid stays';
  return `${change > 0 ? 'raise' : 'lower'} ${size}`;
}

/** How far the lid of a box out of use is cut down, from where it is now; undefined where that is not known. */
export function cutDownText({ key, use }: KeptOut, { boxes }: JobQuantities, system: System): string | undefined {
  const cutDown = deepestCut(boxes?.find(({ id }) => id === key));
  if (!use?.buried || cutDown === undefined) return undefined;
  return `cut the lid down at least ${printMarked(roundedUp(cutDown, system), system)}, from the lid as it is`;
}
