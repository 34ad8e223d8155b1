import { describe, expect, test } from 'vitest';
import { highlightsAt } from '../../../language/editing/highlights.ts';
import { nameAmong, nameAt, placeOfDeclaration } from '../../../language/editing/names-at.ts';
import { placesInAll } from '../../../language/editing/references.ts';
import { shippedPartAt } from '../../../language/library/shipped.ts';
import { drawn, marked } from './marked.ts';
import { yardWith } from './yard.ts';

async function declaredAt(file: string, words: string): Promise<string[]> {
  const { look, looks, offset } = await marked(yardWith(file, words));
  const declared = nameAmong(looks, look, offset)?.declared;
  return declared === undefined ? [] : drawn(looks, [placeOfDeclaration(declared)]);
}

async function usedAt(file: string, words: string): Promise<string[]> {
  const { look, looks, offset } = await marked(yardWith(file, words));
  return drawn(
    looks,
    placesInAll(looks, nameAmong(looks, look, offset)!.declared!).map(({ place }) => place)
  );
}

async function highlightedAt(file: string, words: string): Promise<string[]> {
  const { look, looks, offset } = await marked(yardWith(file, words));
  const found = highlightsAt(look, offset);
  return drawn(
    looks,
    found.map(({ place }) => place)
  ).map((place, index) => `${found[index]!.isDeclaration ? 'declared' : 'used'} ${place.replace(/^.*?: /, '')}`);
}

describe('From a name to where it is declared', () => {
  test.each([
    ['yard.paving', 'base stone d‸epth', 'yard.paving: let «depth» = 150 mm'],
    ['yard.paving', 'base stone depth‸', 'yard.paving: let «depth» = 150 mm'],
    ['yard.paving', 'outline ‸A to', 'shared.paving: point «A» at (0, 0)'],
    ['yard.paving', 'level with st‸ep', 'shared.paving: site { soil clay, benchmark «step», ground level with step }'],
    ['yard.paving', 'rest meets front-‸walk', 'walk.paving: area «front-walk» {'],
    // A neighbour is known by way of the job; what is taken over `as` another area has to be in a file that is used.
    ['walk.paving', 'left meets y‸ard', 'yard.paving: area «yard» {'],
    ['walk.paving', 'finish as ‸yard', undefined],
    ['yard.paving', 'lid in ya‸rd', 'yard.paving: area «yard» {'],
    ['shared.paving', 'existing hed‸ge', 'shared.paving: existing «hedge» { kind lawn }'],
    ['yard.paving', 'traffic fo‸ot', undefined],
    ['yard.paving', 'out‸line A', undefined]
  ])('%s: %s', async (file, words, wanted) => {
    expect(await declaredAt(file, words)).toEqual(wanted === undefined ? [] : [wanted]);
  });

  test('what ships is led to its file of the library', async () => {
    const { look, offset } = await marked(yardWith('yard.paving', 'meets house-w‸all'));
    const { declared } = nameAt(look, offset)!;
    const place = placeOfDeclaration(declared!);
    expect(place.file).toBe(look.project.shipped.file);
    const { file, before } = shippedPartAt(place)!;
    expect([file, place.line - before]).toEqual(['sides.paving', 3]);
  });
});

describe('Every place that names a thing', () => {
  test('in all files of the folder, whichever uses which', async () => {
    const places = [
      'shared.paving: unit «slab» { size 450 x 450 x 50 mm }',
      'other.paving:  paving «slab» in running-bond',
      'walk.paving:  paving «slab» in stack-bond',
      'yard.paving:  paving «slab» in running-bond, joints 3 mm'
    ].map(place => place.replaceAll(/ +/g, ' '));
    expect((await usedAt('shared.paving', 'unit sl‸ab')).sort()).toEqual([...places].sort());
    expect((await usedAt('walk.paving', 'paving ‸slab')).sort()).toEqual([...places].sort());
  });

  test('an area that a neighbour in a used file meets', async () => {
    expect((await usedAt('yard.paving', 'area ya‸rd')).sort()).toEqual([
      'walk.paving: edges { left meets «yard», flush',
      'yard.paving: area «yard» {',
      'yard.paving: box lid in «yard» { rectangle 20 x 14 in, centre (3, 2) m }'
    ]);
  });

  test('what ships, wherever it is taken', async () => {
    expect((await usedAt('walk.paving', 'right meets law‸n')).sort()).toEqual([
      'shared.paving: existing hedge { kind «lawn» }',
      'walk.paving: near, far meets «lawn», edging spiked-strip',
      'walk.paving: right meets «lawn» }'
    ]);
  });
});

describe('Highlights in a text', () => {
  test('a name: where it is declared and used', async () => {
    expect(await highlightedAt('yard.paving', 'let ‸depth')).toEqual([
      'declared let «depth» = 150 mm',
      'used base stone «depth»'
    ]);
  });

  test('a point in an outline and in the edges', async () => {
    expect(await highlightedAt('yard.paving', 'outline ‸A to')).toEqual(
      [
        'used outline «A» to door bowed 3 m out to C',
        'used «A» to door meets house-wall',
        'used C to «A» meets hedge, edging spiked-strip set before laying'
      ].map(place => place.replace('used ', 'used  ').replace('  ', ' '))
    );
  });

  test('a side of an area, in the edges of that area alone', async () => {
    expect(await highlightedAt('walk.paving', 'near, ‸far')).toHaveLength(1);
    expect(await highlightedAt('walk.paving', 'traffic fo‸ot')).toEqual([]);
  });
});
