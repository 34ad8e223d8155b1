// Which pieces are slivers: narrow strips as long as a side of their unit, not the tips of slanted cuts.
import { expect, test } from 'vitest';
import { sliversIn } from '../../language/laying/cut-list/slivers.ts';
import { cut, type Corner, listOf, outline, piece, SHAPES } from './cuts.ts';

function slivers(unit: string, ...corners: readonly Corner[]): number {
  const [group] = listOf([cut(unit, piece(outline(...corners)))]).groups;
  return sliversIn(group!.pieces, SHAPES[unit]!).length;
}

test.each<[string, string, number, Corner[]]>([
  [
    'a strip across the end',
    'slab',
    1,
    [
      [0, 0],
      [40, 0],
      [40, 100],
      [0, 100]
    ]
  ],
  [
    'a strip along the length',
    'slab',
    1,
    [
      [0, 60],
      [200, 60],
      [200, 100],
      [0, 100]
    ]
  ],
  [
    'a wedge that keeps an end',
    'slab',
    1,
    [
      [0, 0],
      [30, 0],
      [10, 100],
      [0, 100]
    ]
  ],
  [
    'a wedge whose cut is bowed',
    'slab',
    1,
    [
      [0, 0],
      [30, 0, 3],
      [10, 100],
      [0, 100]
    ]
  ],
  [
    'a tip at a corner',
    'slab',
    0,
    [
      [0, 0],
      [60, 0],
      [0, 60]
    ]
  ],
  [
    'a strip in the middle of a side',
    'slab',
    0,
    [
      [20, 0],
      [180, 0],
      [180, 40],
      [20, 40]
    ]
  ],
  [
    'half of a narrow unit',
    'slab',
    0,
    [
      [0, 0],
      [200, 0],
      [200, 50],
      [0, 50]
    ]
  ],
  [
    '50 mm of a wide one',
    'square',
    0,
    [
      [0, 0],
      [50, 0],
      [50, 300],
      [0, 300]
    ]
  ],
  [
    'less than 50 mm of a wide one',
    'square',
    1,
    [
      [0, 0],
      [49, 0],
      [49, 300],
      [0, 300]
    ]
  ],
  [
    'a strip that a notch breaks',
    'square',
    0,
    [
      [0, 0],
      [40, 0],
      [40, 300],
      [0, 300],
      [0, 200],
      [20, 200],
      [20, 100],
      [0, 100]
    ]
  ],
  [
    'the side of a hexagon',
    'hex',
    1,
    [
      [50, 0],
      [150, 0],
      [160, 17.3],
      [40, 17.3]
    ]
  ]
])('%s', (_, unit, count, corners) => {
  expect(slivers(unit, ...corners)).toBe(count);
});
