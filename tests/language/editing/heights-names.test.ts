// Names in rows of heights, at the ends of pipes, in what is accepted, delivered and met: where they lead, and another name.
import { expect, test } from 'vitest';
import { nameAt } from '../../../language/editing/names-at.ts';
import { renamed } from '../../../language/editing/rename.ts';
import { drain } from '../../../language/paving.ts';
import { drawn, marked } from './marked.ts';

const JOB = `job "Terrace" { rules britain }
site { soil clay, benchmark sill 10 m }
point A at (0, 0)
point B at (5, 0) m
point C at (5, 4) m
point near at (0, 9) m
existing old-walk
heights by laser, sill reads 1.2 m {
  ground   A 1.4  B 1.4  C 1.5 m
  old-walk A 1.4  C 1.5 m
}
drain slot { channel along A to B, 130 mm wide }
area terrace {
  outline A to B to C
  finish 60 mm below sill along A to B, falling 1:60 away from A to B
  edges {
    A to B meets slot
    B to C meets old-walk
  }
}
area strip {
  outline rectangle 4 x 1 m, corner (9, 9) m
  finish 60 mm below sill along near, falling 1:60 away from near
}
box valve in strip { circle 20 cm across, centre 1 m along near, 50 cm out }
pipe feed { from valve to C }
accept fall-too-flat on terrace because "As it was."
log { 2026-05-01 delivered type-1 3 t, done dig of terrace along A to C }
`;

const at = (words: string): Readonly<Record<string, string>> => ({
  'a.paving': JOB.replace(words.replace('‸', ''), words)
});

test.each([
  ['ground   A 1.4  B‸ 1.4', 'point B'],
  ['old-wa‸lk A', 'existing old-walk'],
  ['laser, si‸ll reads', 'benchmark sill'],
  ['meets sl‸ot', 'drain slot'],
  ['from val‸ve to', 'kept-out valve'],
  ['valve to C‸ }', 'point C'],
  ['on terr‸ace because', 'area terrace'],
  ['delivered type‸-1', 'material type-1'],
  ['away from A‸ to B', 'point A'],
  // A side of the rectangle, though a point is called so too.
  ['along ne‸ar, falling', undefined],
  ['1 m along ne‸ar, 50', undefined]
])('%s leads to %s', async (words, thing) => {
  const { look, offset } = await marked(at(words));
  const declared = nameAt(look, offset)?.declared;
  expect(declared && `${declared.kind} ${declared.name}`).toBe(thing);
});

async function places(words: string, name: string): Promise<string[]> {
  const { looks, look, offset, paving } = await marked(at(words));
  const result = drain(renamed(looks, look, offset, name, paving.parse));
  if ('refused' in result) return [result.refused];
  return drawn(
    looks,
    result.changes.map(({ place }) => place)
  );
}

test('another name for a point goes to its heights, its drain, its falls and the log', async () => {
  expect((await places('ground   A‸ 1.4', 'K')).map(line => line.replace('a.paving: ', ''))).toEqual([
    'point «A» at (0, 0)',
    'ground «A» 1.4 B 1.4 C 1.5 m',
    'old-walk «A» 1.4 C 1.5 m',
    'drain slot { channel along «A» to B, 130 mm wide }',
    'outline «A» to B to C',
    'finish 60 mm below sill along «A» to B, falling 1:60 away from A to B',
    'finish 60 mm below sill along A to B, falling 1:60 away from «A» to B',
    '«A» to B meets slot',
    'log { 2026-05-01 delivered type-1 3 t, done dig of terrace along «A» to C }'
  ]);
});

test('another name for a thing goes to its row of heights and the side that meets it', async () => {
  expect(await places('old-wa‸lk A', 'path')).toHaveLength(3);
  expect(await places('drain sl‸ot', 'gutter')).toHaveLength(2);
});

test('a point called as a side of a rectangle takes that side along nowhere', async () => {
  expect(await places('point ne‸ar', 'peg')).toEqual(['a.paving: point «near» at (0, 9) m']);
});
