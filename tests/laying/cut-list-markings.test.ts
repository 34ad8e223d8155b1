// How a cut is told and marked out: each shape worked by hand.
import { describe, expect, test } from 'vitest';
import { circleLoop, type Loop, reversedLoop } from '../../language/geometry/index.ts';
import type { CutGroup } from '../../language/laying/cut-list/cut-list.ts';
import type { Piece } from '../../language/laying/laid.ts';
import { markingsText } from '../../language/laying/cut-list/marking-out-text.ts';
import { printThickness } from '../../language/measures/print.ts';
import { cut, listOf, outline, piece } from './cuts.ts';

function only(unit: string, ...pieces: readonly Piece[]): CutGroup {
  const { groups } = listOf([cut(unit, ...pieces)]);
  expect(groups).toHaveLength(1);
  return groups[0]!;
}

function told(group: CutGroup): string[] {
  return group.pieces.map(each => markingsText(each.markings, metres => printThickness(metres, 'metric')));
}

/** Kind and words of a single piece. */
function single(unit: string, rim: Loop, ...holes: readonly Loop[]): { kind: string; words: string } {
  const group = only(unit, piece(rim, ...holes));
  return { kind: group.kind, words: told(group)[0]! };
}

describe('straight cuts', () => {
  test('square to the length', () => {
    const group = only('slab', piece(outline([0, 0], [150, 0], [150, 100], [0, 100])));
    expect(group.pieces[0]?.markings).toEqual([
      { kind: 'square-cut', across: 'length', size: expect.closeTo(0.15, 12), keep: 'left' }
    ]);
    expect(told(group)).toEqual(['cut to 150 mm long']);
    expect(group).toMatchObject({ kind: 'straight', straightCuts: 1, count: 1, number: 1 });
    expect(group.area).toBeCloseTo(0.015, 12);
    expect(group.share).toBeCloseTo(0.75, 12);
    expect(group.sawLength).toBeCloseTo(0.1, 12);
    expect(group.narrowest).toBeCloseTo(0.1, 12);
    expect(group.offcutNarrowest).toBeCloseTo(0.05, 12);
  });

  test('in inches as on a tape', () => {
    const { groups } = listOf([cut('slab', piece(outline([0, 0], [158.75, 0], [158.75, 100], [0, 100])))]);
    const words = markingsText(groups[0]!.pieces[0]!.markings, metres => printThickness(metres, 'imperial'));
    expect(words).toBe('cut to 6 1/4 in long');
  });

  test('square to the width, whichever side is left', () => {
    expect(single('slab', outline([0, 40], [200, 40], [200, 100], [0, 100]))).toEqual({
      kind: 'straight',
      words: 'cut to 60 mm wide'
    });
  });

  test('a finished edge stays where it is', () => {
    expect(single('coping', outline([50, 0], [200, 0], [200, 100], [50, 100])).words).toBe(
      'cut to 150 mm long, keeping the right end'
    );
  });

  test('slanting from side to side', () => {
    const group = only('slab', piece(outline([0, 0], [80, 0], [120, 100], [0, 100])));
    expect(told(group)).toEqual([
      'straight cut from 80 mm along the near side to 120 mm along the far side, both from the left end, which is kept'
    ]);
    expect(group).toMatchObject({ kind: 'straight', straightCuts: 1 });
    expect(group.sawLength).toBeCloseTo(Math.hypot(0.04, 0.1), 12);
    // The offcut runs from 80 to 200 mm on one side and from 120 to 200 on the other: its least width is across.
    expect(group.offcutNarrowest).toBeCloseTo(0.1, 12);
  });

  test('slanting from end to end', () => {
    expect(single('slab', outline([0, 0], [200, 0], [200, 60], [0, 30])).words).toBe(
      'straight cut from 30 mm along the left end to 60 mm along the right end, both from the near side, which is kept'
    );
  });

  test('from corner to corner', () => {
    expect(single('slab', outline([0, 0], [200, 0], [0, 100])).words).toBe(
      'straight cut from the left far corner to the right near corner, keeping the left near corner'
    );
  });

  test('from a corner to a side', () => {
    expect(single('slab', outline([0, 0], [120, 0], [200, 100], [0, 100])).words).toBe(
      'straight cut from 120 mm along the near side from the left near corner to the right far corner, keeping the left end'
    );
  });

  test('a corner off, and a corner alone', () => {
    const off = only('slab', piece(outline([0, 0], [200, 0], [200, 40], [170, 100], [0, 100])));
    expect(told(off)).toEqual([
      'cut the right far corner off, from 60 mm along the right end to 30 mm along the far side, both from that corner'
    ]);
    // The corner that falls off is a right-angled triangle of 30 by 60: across it, 30 x 60 / its longest side.
    expect(off.offcutNarrowest).toBeCloseTo((0.03 * 0.06) / Math.hypot(0.03, 0.06), 12);
    expect(single('slab', outline([0, 0], [70, 0], [0, 50])).words).toBe(
      'keep only the left near corner, cut from 70 mm along the near side to 50 mm along the left end, both from that corner'
    );
  });

  test('half a hexagon', () => {
    // A hexagon of 200 across corners: flat sides from 50 to 150. Cut across the middle of both flat sides.
    const group = only('hex', piece(outline([50, 0], [100, 0], [100, 173], [50, 173], [0, 86.5])));
    expect(group.kind).toBe('straight');
    expect(group.share).toBeCloseTo(0.5, 12);
    expect(told(group)).toEqual([
      'straight cut from 50 mm along the near side to 50 mm along the far side, both from the left end, which is kept'
    ]);
    expect(single('hex', outline([0, 86.5], [200, 86.5], [150, 173], [50, 173])).words).toBe(
      'straight cut from the right near corner to the left far corner, keeping the left near side'
    );
  });

  test('no line for what a saw takes anyway', () => {
    // The cut passes a corner of the unit by 0.3 mm, and is bent by 0.2 mm in the middle.
    const group = only('slab', piece(outline([0, 0], [150, 0], [150.2, 50], [150, 99.7], [149.9, 100], [0, 100])));
    expect(told(group)).toEqual(['cut to 150 mm long']);
  });

  test('a flat arc is cut straight', () => {
    expect(single('slab', outline([0, 0], [150, 0, 0.4], [150, 100], [0, 100]))).toEqual({
      kind: 'straight',
      words: 'cut to 150 mm long'
    });
  });
});

describe('several cuts', () => {
  test('shorter and narrower', () => {
    const group = only('slab', piece(outline([0, 0], [150, 0], [150, 60], [0, 60])));
    expect(told(group)).toEqual(['cut to 150 mm long; cut to 60 mm wide']);
    expect(group).toMatchObject({ kind: 'several cuts', straightCuts: 2 });
    expect(group.sawLength).toBeCloseTo(0.21, 12);
    expect(group.offcutNarrowest).toBeUndefined();
  });

  test('a strip from the middle is told by what comes off', () => {
    expect(single('coping', outline([30, 0], [180, 0], [180, 100], [30, 100])).words).toBe(
      'cut 20 mm off the right end; cut 30 mm off the left end'
    );
  });

  test('cut on all sides', () => {
    const group = only('coping', piece(outline([30, 20], [180, 20], [180, 90], [30, 90])));
    expect(group).toMatchObject({ kind: 'several cuts', straightCuts: 4 });
    expect(group.sawLength).toBeCloseTo(0.44, 12);
    expect(told(group)[0]!.split('; ').sort()).toEqual([
      'cut 10 mm off the far side',
      'cut 20 mm off the near side',
      'cut 20 mm off the right end',
      'cut 30 mm off the left end'
    ]);
  });

  test('two pieces of one unit', () => {
    const group = only(
      'slab',
      piece(outline([0, 0], [60, 0], [60, 100], [0, 100])),
      piece(outline([120, 0], [200, 0], [200, 100], [120, 100]))
    );
    // Turned so that most of it lies left.
    expect(told(group)).toEqual(['cut to 60 mm long, keeping the right end', 'cut to 80 mm long']);
    expect(group).toMatchObject({ kind: 'several cuts', straightCuts: 2 });
    expect(group.share).toBeCloseTo(0.7, 12);
    expect(group.narrowest).toBeCloseTo(0.06, 12);
  });

  test('no straight cut goes through another piece', () => {
    const corner = piece(outline([0, 0], [80, 0], [80, 60], [0, 60]));
    const above = piece(outline([0, 70], [200, 70], [200, 100], [0, 100]));
    const group = only('coping', corner, above);
    expect(group).toMatchObject({ straightCuts: 0, kind: 'several cuts' });
    expect(told(group)[0]).toBe(
      'saw from 80 mm along and 0 mm across to 80 mm along and 60 mm across, to 0 mm along and 60 mm across, keeping the left near corner'
    );
  });
});

describe('notches', () => {
  test('out of a corner', () => {
    const group = only('slab', piece(outline([0, 0], [150, 0], [150, 30], [200, 30], [200, 100], [0, 100])));
    expect(group.kind).toBe('notched');
    expect(group.straightCuts).toBe(0);
    expect(group.sawLength).toBeCloseTo(0.08, 12);
    // A half turn brings the bulk of it to the near left.
    expect(told(group)).toEqual(['notch 50 mm along by 30 mm across out of the right near corner']);
  });

  test('a U in a side', () => {
    const rim = outline([0, 0], [40, 0], [40, 60], [90, 60], [90, 0], [200, 0], [200, 100], [0, 100]);
    const group = only('coping', piece(rim));
    expect(group.pieces[0]?.markings).toEqual([
      {
        kind: 'side-notch',
        side: 'near',
        start: { side: 'near', from: 'left near', at: expect.closeTo(0.04, 12) },
        width: expect.closeTo(0.05, 12),
        depth: expect.closeTo(0.06, 12)
      }
    ]);
    expect(told(group)).toEqual(['notch 50 mm wide and 60 mm deep in the near side, 40 mm from the left near corner']);
    expect(group).toMatchObject({ kind: 'notched' });
    expect(group.sawLength).toBeCloseTo(0.17, 12);
  });

  test('in an end', () => {
    const rim = outline([0, 0], [200, 0], [200, 20], [160, 20], [160, 50], [200, 50], [200, 100], [0, 100]);
    expect(single('coping', rim).words).toBe(
      'notch 30 mm wide and 40 mm deep in the right end, 20 mm from the right near corner'
    );
  });

  test('two corners out of one unit', () => {
    const rim = outline([0, 0], [150, 0], [150, 30], [200, 30], [200, 100], [20, 100], [20, 80], [0, 80]);
    expect(single('coping', rim)).toEqual({
      kind: 'notched',
      words:
        'notch 50 mm along by 30 mm across out of the right near corner; notch 20 mm along by 20 mm across out of the left far corner'
    });
  });

  test('a notch that is not square is told corner by corner', () => {
    const rim = outline([0, 0], [150, 0], [140, 30], [200, 40], [200, 100], [0, 100]);
    expect(single('coping', rim)).toEqual({
      kind: 'notched',
      words:
        'saw from 150 mm along and 0 mm across to 140 mm along and 30 mm across, to 200 mm along and 40 mm across, keeping the left end'
    });
  });

  test('a notch beside a straight cut', () => {
    const rim = outline([0, 0], [40, 0], [40, 60], [90, 60], [90, 0], [180, 0], [180, 100], [0, 100]);
    const group = only('coping', piece(rim));
    expect(group).toMatchObject({ kind: 'notched', straightCuts: 0 });
    expect(told(group)).toEqual([
      'notch 50 mm wide and 60 mm deep in the near side, 40 mm from the left near corner; cut to 180 mm long'
    ]);
  });
});

describe('curves', () => {
  // Chord 100, bow 10: radius 100 x 100 / 80 + 5 = 130.
  test('bowing out', () => {
    const group = only('slab', piece(outline([0, 0], [150, 0, 10], [150, 100], [0, 100])));
    expect(group.kind).toBe('curved');
    const [curve] = group.pieces[0]!.markings;
    expect(curve).toMatchObject({
      kind: 'curve',
      bows: 'out',
      marks: [
        { side: 'near', from: 'left near', at: expect.closeTo(0.15, 12) },
        { side: 'far', from: 'left far', at: expect.closeTo(0.15, 12) }
      ],
      radius: expect.closeTo(0.13, 12),
      bow: expect.closeTo(0.01, 12),
      chord: expect.closeTo(0.1, 12)
    });
    expect(told(group)).toEqual([
      'curve of radius 130 mm from 150 mm along the near side from the left near corner to 150 mm along the far side from the left far corner, keeping the left end, bowing 10 mm out over a chord of 100 mm; height off the chord, from the first mark: 10 mm at 50 mm'
    ]);
    // Half the turn has the sine 50 / 130.
    expect(group.sawLength).toBeCloseTo(0.26 * Math.asin(5 / 13), 12);
  });

  test('bowing in, with heights every so often', () => {
    // Chord 160, bow 40: radius 160 x 160 / 320 + 20 = 100; 40 mm from the middle the height is root(100² - 40²) - 60.
    const group = only('coping', piece(outline([0, 0], [20, 0, -40], [180, 0], [200, 0], [200, 100], [0, 100])));
    const [curve] = group.pieces[0]!.markings;
    expect(curve).toMatchObject({ bows: 'in', radius: expect.closeTo(0.1, 12) });
    const height = Math.sqrt(100 * 100 - 40 * 40) - 60;
    expect(curve?.kind === 'curve' && curve.heights).toEqual([
      { at: expect.closeTo(0.04, 12), height: expect.closeTo(height / 1000, 12) },
      { at: expect.closeTo(0.08, 12), height: expect.closeTo(0.04, 12) },
      { at: expect.closeTo(0.12, 12), height: expect.closeTo(height / 1000, 12) }
    ]);
  });

  test('what is kept when a unit is cut more than once, and a piece without a corner', () => {
    const both = outline([30, 0], [150, 0, 10], [150, 100], [30, 100, -10]);
    expect(
      single('coping', both)
        .words.split('; ')
        .filter(words => words.startsWith('curve'))
    ).toEqual([
      expect.stringContaining('keeping the left end, bowing 10 mm out'),
      expect.stringContaining('keeping the right end, bowing 10 mm in')
    ]);
    const cap = outline([50, 0], [150, 0, 20]);
    expect(single('coping', cap).words).toContain('keeping what lies between the marks, bowing 20 mm out');
    const hollow = outline([0, 0], [50, 0, -20], [150, 0], [200, 0], [200, 100], [0, 100]);
    expect(single('coping', hollow).words).toContain('keeping the far side, bowing 20 mm in');
  });

  test('an arc in several parts is one', () => {
    const whole = outline([0, 0], [150, 0, 10], [150, 100], [0, 100]);
    const arc = whole[1]!;
    const turn = arc.arc!.turn / 2;
    const middle = { x: 0.16, y: 0.05 };
    const parts = [
      { from: arc.from, to: middle, arc: { centre: arc.arc!.centre, turn } },
      { from: middle, to: arc.to, arc: { centre: arc.arc!.centre, turn } }
    ];
    const split = [whole[0]!, ...parts, whole[2]!, whole[3]!];
    const { groups } = listOf([cut('slab', piece(whole)), cut('slab', piece(split))]);
    expect(groups.map(group => group.count)).toEqual([2]);
    expect(single('slab', split)).toEqual(single('slab', whole));
  });

  test('a line with an arc in it is told corner by corner', () => {
    expect(single('coping', outline([0, 0], [150, 0], [150, 50, -10], [200, 50], [200, 100], [0, 100]))).toEqual({
      kind: 'curved',
      words:
        'saw from 150 mm along and 0 mm across to 150 mm along and 50 mm across, in a curve of radius 36.3 mm bowing 10 mm in to 200 mm along and 50 mm across, keeping the left end'
    });
  });

  test('a round piece', () => {
    const group = only('slab', piece(circleLoop({ x: 0.06, y: 0.05 }, 0.04)));
    expect(told(group)).toEqual(['cut to a circle 80 mm across, its middle 60 mm along and 50 mm across']);
    expect(group.kind).toBe('curved');
    expect(group.narrowest).toBeCloseTo(0.08, 3);
    expect(group.sawLength).toBeCloseTo(0.08 * Math.PI, 12);
  });
});

describe('holes', () => {
  const whole = outline([0, 0], [200, 0], [200, 100], [0, 100]);

  test('round', () => {
    const group = only('coping', piece(whole, reversedLoop(circleLoop({ x: 0.12, y: 0.04 }, 0.03))));
    expect(told(group)).toEqual(['round hole 60 mm across, its middle 120 mm along and 40 mm across']);
    expect(group).toMatchObject({ kind: 'with a hole', straightCuts: 0 });
    expect(group.area).toBeCloseTo(0.02 - Math.PI * 0.0009, 12);
    expect(group.sawLength).toBeCloseTo(0.06 * Math.PI, 12);
  });

  test('square to the unit', () => {
    expect(single('coping', whole, outline([50, 20], [110, 20], [110, 60], [50, 60])).words).toBe(
      'hole 60 mm along by 40 mm across, starting 50 mm along and 20 mm across'
    );
  });

  test('of any other shape, of a unit cut straight as well', () => {
    const rim = outline([0, 0], [180, 0], [180, 100], [0, 100]);
    expect(single('coping', rim, outline([50, 20], [110, 20], [80, 60]))).toEqual({
      kind: 'with a hole',
      words:
        'cut to 180 mm long; saw from 110 mm along and 20 mm across to 50 mm along and 20 mm across, to 80 mm along and 60 mm across, back to the start, keeping the outside'
    });
  });
});
