import { type Side as LoopSide, sharedRun, sideLength } from '../../geometry/index.ts';
import type { Area, Edge, Job, Key, Material } from '../../job/job.ts';
import type { LogEntry } from '../../job/log.ts';
import { Logged } from '../../schedule/logged.ts';
import type { Side } from './built.ts';
import { edgeNow } from './sides-now.ts';
import type { Built, EdgingOut } from './contract.ts';

/** Metres: what a tape does not show. */
const NOTHING = 1e-3;

/** A side with edging. */
interface Edged {
  readonly area: Area;
  readonly edge: Edge;
  readonly material: Material;
  readonly side: LoopSide;
}

/** What of the edging that the log tells as set stays where it stands and what comes out, by area and material. */
export function builtEdging(older: Side, newer: Side, log: readonly LogEntry[], keyNow: (key: Key) => Key): Built[] {
  const logged = new Logged(log);
  const set = edgedIn(older).filter(
    ({ area, edge }) => logged.edging(keyNow(area.key), edgeNow(edge, keyNow)) !== undefined
  );
  const wanted = edgedIn(newer);
  const groups = new Map<string, { key: Key; name: string; material: Material; set: Edged[]; wanted: Edged[] }>();
  const into = (one: Edged, key: Key, list: 'set' | 'wanted'): void => {
    const id = `${key} ${one.material.key}`;
    const group = groups.get(id) ?? { key, name: one.area.name, material: one.material, set: [], wanted: [] };
    group[list].push(one);
    groups.set(id, list === 'wanted' ? { ...group, name: one.area.name } : group);
  };
  for (const one of set) into(one, keyNow(one.area.key), 'set');
  for (const one of wanted) into(one, one.area.key, 'wanted');
  return [...groups.values()].flatMap(({ key, name, material, set: own, wanted: here }): Built[] => {
    const sides = (all: readonly Edged[]): LoopSide[] =>
      all.filter(one => one.material.key === material.key).map(({ side }) => side);
    const stays = own.map(({ side }) => ({ side, length: Math.min(sideLength(side), sharedRun(side, sides(wanted))) }));
    const there = here.reduce((sum, { side }) => sum + Math.min(sideLength(side), sharedRun(side, sides(set))), 0);
    if (own.length === 0 && there < NOTHING) return [];
    const built = total(own.map(({ side }) => sideLength(side)));
    const kept = total(stays.map(({ length }) => length));
    const out = outOf(material, stays);
    return [
      {
        stage: 'edging',
        area: key,
        name,
        material: material.name,
        amounts: [
          {
            measure: 'm',
            built,
            stays: kept,
            madeOtherwise: 0,
            comesOut: settled(built - kept),
            toBuild: settled(total(here.map(({ side }) => sideLength(side))) - there)
          }
        ],
        because: [],
        ...(out.length === 0 ? {} : { out })
      }
    ];
  });
}

/** The edging of this name that any side of a job has. */
export function edgingNamed({ areas }: Job, name: string | undefined): Material | undefined {
  return areas.flatMap(({ edges }) => edges).find(({ edging }) => edging !== undefined && edging.name === name)?.edging;
}

function edgedIn({ job }: Side): Edged[] {
  return job.areas.flatMap(area =>
    area.edges.flatMap((edge, index) =>
      edge.edging === undefined ? [] : [{ area, edge, material: edge.edging, side: area.outline[index]! }]
    )
  );
}

/** Side by side: a piece of which a part comes out comes out. */
function outOf(
  { length, curvePieces }: Material,
  stays: readonly { readonly side: LoopSide; readonly length: number }[]
): EdgingOut[] {
  const shapes = [
    ['straight', length],
    ['curve', curvePieces ?? length]
  ] as const;
  return shapes.flatMap(([shape, piece]): EdgingOut[] => {
    const lengths = stays
      .filter(({ side }) => (side.arc === undefined ? 'straight' : 'curve') === shape)
      .map(({ side, length: kept }) => settled(sideLength(side) - kept));
    const out = total(lengths);
    if (out === 0) return [];
    const isKnown = piece !== undefined && piece.value > 0;
    const pieces = isKnown ? total(lengths.map(one => Math.ceil(one / piece.value - NOTHING))) : undefined;
    return [{ shape, length: out, ...(pieces === undefined ? {} : { pieces }) }];
  });
}

function settled(length: number): number {
  return length > NOTHING ? length : 0;
}

function total(lengths: readonly number[]): number {
  return lengths.reduce((sum, length) => sum + length, 0);
}
