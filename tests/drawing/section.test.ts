import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { svgOf } from '../../language/drawing/svg/svg.ts';
import { sectionDrawing } from '../../language/views/section/section-drawing.ts';
import type { SectionInput } from '../../language/views/section/section-input.ts';
import { sectionOfJob } from '../../language/views/section/section-of-job.ts';
import { sectionText } from '../../language/views/section/section-text.ts';
import type { Colours } from '../../language/views/text/colours.ts';
import { evaluated } from '../language/in-memory.ts';
import { labelsOf, textsOverOthers } from './labels.ts';
import { SITE_JOBS } from './site-jobs.ts';

/* Sections as they are drawn and told; `UPDATE=1` writes them anew, as for plans. */
const UPDATE = process.env.UPDATE === '1';
const GOLDEN = path.join(import.meta.dirname, 'golden');

const as = (text: string): string => text;
const PLAIN: Colours = { strong: as, faint: as, error: as, warning: as, note: as };

async function cut(text: string, name: string): Promise<SectionInput> {
  const { job, numbers } = await evaluated(text);
  return sectionOfJob(job!, numbers!, name)!;
}

function asKept(name: string, text: string): string {
  const file = path.join(GOLDEN, name);
  if (UPDATE) writeFileSync(file, text);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

const CUTS = await Promise.all(
  (
    [
      ['falling terrace', 'long'],
      ['falling terrace', 'side'],
      ['twisted drive', 'across'],
      ['crowded yard', 'y'],
      ['raised path', 'spine']
    ] as const
  ).map(async ([job, name]) => [`section-${name}`, await cut(SITE_JOBS[job]!, name)] as const)
);

describe.each(CUTS)('%s', (name, input) => {
  const drawing = sectionDrawing(input);

  it('is drawn and told as before', () => {
    const svg = svgOf(drawing);
    expect(svg).toBe(asKept(`${name}.svg`, svg));
    const text = `${sectionText(input, PLAIN)}\n`;
    expect(text).toBe(asKept(`${name}.txt`, text));
  });

  it('has a key of its own for every shape, and no text over another', () => {
    const keys = drawing.layers.flatMap(({ shapes }) => shapes.map(({ key }) => key));
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
    expect(textsOverOthers(drawing)).toEqual([]);
  });

  it('says by how much heights are drawn larger, and draws them so', () => {
    const said = labelsOf(drawing).find(({ key }) => key === 'sheet/under-title')!.text;
    const times = Number(/heights drawn (\d+) times/.exec(said)?.[1] ?? 1);
    const [finish] = input.lines.filter(({ role }) => role === 'finish');
    const line = drawing.layers.flatMap(({ shapes }) => shapes).find(({ key }) => key === finish!.key);
    const [from, to] = [finish!.levels[0]!, finish!.levels.at(-1)!];
    if (line?.kind !== 'line') throw new Error('The finish is not drawn.');
    const [start, end] = [line.sides[0]!.from, line.sides.at(-1)!.to];
    expect(end.x - start.x).toBeCloseTo(to.at - from.at, 9);
    expect(end.y - start.y).toBeCloseTo((to.z - from.z) * times, 9);
  });
});

describe('a section', () => {
  const heightsAt = ({ stations }: SectionInput, at: number): (string | undefined)[] => {
    const { finish, ground, digBottom } = stations.find(one => Math.abs(one.at - at) < 0.002)!;
    return [finish, ground, digBottom];
  };

  it('tells the heights at its ends', async () => {
    const long = await cut(SITE_JOBS['falling terrace']!, 'long');
    expect(heightsAt(long, 0)).toEqual(['2 1/2 in below', '3 in below', '11 1/2 in below']);
    expect(heightsAt(long, long.length)).toEqual(['5 11/16 in below', '6 3/4 in below', '14 11/16 in below']);
    const across = await cut(SITE_JOBS['twisted drive']!, 'across');
    expect(heightsAt(across, 0)).toEqual(['9.985 m', '10.020 m', '9.755 m']);
  });

  it('is no deeper than its layers, and deeper under a soft spot', async () => {
    const { bodies } = await cut(SITE_JOBS['falling terrace']!, 'long');
    const soft = bodies.find(({ role }) => role === 'soft-spot')!;
    const [top, bottom] = [soft.corners[0]!, soft.corners.at(-1)!];
    expect(top.z - bottom.z).toBeCloseTo(4 * 0.0254, 6);
  });

  it('crosses a pipe at the depth that is told, and says that it is not proven', async () => {
    const { marks } = await cut(SITE_JOBS['falling terrace']!, 'side');
    const pipe = marks.find(({ isPipe }) => isPipe)!;
    expect(pipe.text).toBe('pipe irrigation: about 10 in deep, depth not proven');
  });

  it('names drains within an area, and areas on both sides of a step', async () => {
    const { marks, stations } = await cut(SITE_JOBS['crowded yard']!, 'y');
    const texts = marks.map(({ text }) => text);
    expect(texts).toEqual(
      expect.arrayContaining(['area yard', 'channel strip', 'area lane', 'pipe water: 600 mm deep'])
    );
    // A height that rounds to either side of a half is told once.
    expect(stations.filter(({ finish }) => finish?.includes('/'))).toEqual([]);
  });

  it('draws as walls what stands up, and what lies flat at the height taken', async () => {
    const rolesOf = ({ bodies }: SectionInput): string[] => bodies.map(({ role }) => role);
    const wall = await cut(SITE_JOBS['falling terrace']!, 'side');
    expect(rolesOf(wall)).toContain('wall');
    const raised = SITE_JOBS['raised path']!.replace(/ {2}paving .*\n/, '');
    const path = await cut(raised, 'spine');
    const beside = path.lines.filter(({ role }) => role === 'beside');
    expect(beside.map(({ levels }) => levels.map(({ z }) => z))).toEqual([[9.985, 9.985]]);
    for (const flat of ['existing-paving', 'road', 'footway', 'concrete-slab', 'drain-channel', 'kerb']) {
      const named = await cut(
        raised
          .replace('meets footway', `meets ${flat}-there`)
          .replace('existing footway { kind footway }', `existing footway\nexisting ${flat}-there { kind ${flat} }`),
        'spine'
      );
      expect(rolesOf(named)).not.toContain('wall');
      expect(named.lines.filter(({ role }) => role === 'beside')).toEqual([]);
      expect(named.marks.map(({ text }) => text)).toContain(`${flat}-there`);
    }
  });

  it('draws a channel at the end of the line with its concrete, and no topsoil behind it or a wall', async () => {
    const { bodies } = await cut(SITE_JOBS['raised path']!, 'spine');
    const depths = bodies
      .filter(({ key }) => key.startsWith('drain:end-channel'))
      .map(({ role, corners }) => [
        role,
        Math.min(...corners.map(({ z }) => z)),
        Math.max(...corners.map(({ z }) => z))
      ]);
    const [under, , , channel] = depths;
    expect(under).toEqual(['concrete', expect.closeTo(9.73, 6), expect.closeTo(9.83, 6)]);
    expect(channel).toEqual(['drain', expect.closeTo(9.83, 6), expect.closeTo(9.95, 6)]);
    expect(bodies.filter(({ role }) => role === 'topsoil')).toEqual([]);
    const terrace = await cut(SITE_JOBS['falling terrace']!, 'side');
    const topsoil = terrace.bodies.filter(({ role }) => role === 'topsoil').flatMap(({ corners }) => corners);
    expect(Math.max(...topsoil.map(({ at }) => at))).toBeLessThan(0);
  });

  it('shows stone under the layers where the stripped ground lies low', async () => {
    const path = await cut(SITE_JOBS['raised path']!, 'spine');
    const made = path.bodies.filter(({ role }) => role === 'made-up');
    // At 4 m: finish 10.080 less 190 mm of layers; ground 9.95 - 0.35 x 4 / 6 = 9.717 less 50 mm of topsoil.
    const [, ground, digBottom] = heightsAt(path, 4);
    expect(Math.max(...made.flatMap(({ corners }) => corners.map(({ z }) => z)))).toBeCloseTo(9.89, 6);
    expect([ground, digBottom]).toEqual(['9.717 m', '9.667 m']);
    expect(path.layers.at(-1)).toBe('path: low ground made up with type-1, 292 mm at most along this line');
  });

  it('is cut along a line of the job, too, and tells the stations of a finish along it', async () => {
    const path = await cut(SITE_JOBS['raised path']!, 'spine');
    expect(heightsAt(path, 4)[0]).toBe('10.080 m');
    expect(heightsAt(path, 12)[0]).toBe('9.955 m');
    const bent = await cut(SITE_JOBS['raised path']!, 'both');
    expect(bent.stations.map(({ name }) => name).filter(name => name !== undefined)).toEqual(['P', 'R', 'S']);
  });

  it('says what it can show of a job without a finish', async () => {
    const text = SITE_JOBS['falling terrace']!.replace(/ {2}finish .*\n/, '');
    const bare = await cut(text, 'long');
    expect(bare.missing).toEqual(['terrace has no finish']);
    expect(svgOf(sectionDrawing(bare))).not.toMatch(/NaN|Infinity|undefined/);
    expect(sectionText(bare, PLAIN)).toContain('Not shown: terrace has no finish.');
  });
});
