// What page and client take from each other, patches, and keys.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyPatch } from '../../extension/panel/plan/apply-patch.ts';
import { commandOf } from '../../extension/panel/plan/keys.ts';
import { isFromPlan, isPlanState, isToPlan } from '../../extension/panel/plan/messages.ts';
import { NO_TOOL, type Tool, toolSigns, toolWords, withPlace } from '../../extension/panel/plan/tools.ts';
import { fillIn } from '../../extension/panel/plan/words.ts';
import { patchBetween } from '../../language/views/live-plan/plan-patch.ts';
import type { LiveShape } from '../../server/plan-protocol.ts';
import { smallPlan } from './plans.ts';
import { ENGLISH } from './words.ts';

const plan = smallPlan();
const message = { kind: 'plan', about: 'file:///a.paving', number: 3, words: ENGLISH, plan };
const state = { about: 'file:///a.paving', turn: 0.5, hidden: ['cuts'], selected: 'area:terrace' };

describe('What page and client take from each other', () => {
  test.each([
    message,
    { kind: 'patch', number: 4, since: 3, patch: {} },
    { kind: 'patch', number: 4, since: 3, patch: { shapes: { gone: ['a'], put: [{ item: plan.shapes[0] }] } } },
    {
      kind: 'patch',
      number: 4,
      since: 3,
      patch: { things: { gone: [], put: [{ item: plan.things[0], before: 'b' }] } }
    },
    {
      kind: 'patch',
      number: 4,
      since: 3,
      patch: { things: { gone: [], set: [{ key: 'a', fields: { name: 'b', number: null } }], put: [] } }
    },
    { kind: 'problem', about: 'a', words: ENGLISH, problem: 'No job.' },
    { kind: 'at-cursor', things: ['area:terrace'] },
    { kind: 'section', drawing: { name: 'svg', attributes: {}, inside: [] }, text: '' },
    { kind: 'no-section', problem: 'No.' },
    { kind: 'not-dragged', problem: 'No.' }
  ])('is what they say, to the page: %#', said => {
    expect(isToPlan(said)).toBe(true);
  });

  const withShape = (changes: object): object => ({
    ...message,
    plan: { ...plan, shapes: [{ ...plan.shapes[1], ...changes }] }
  });
  const withThing = (changes: object): object => ({
    ...message,
    plan: { ...plan, things: [{ ...plan.things[0], ...changes }] }
  });

  test.each([
    undefined,
    null,
    'plan',
    [],
    { ...message, kind: 'other' },
    { ...message, number: -1 },
    { ...message, about: 7 },
    { ...message, words: { ...ENGLISH, fit: 1 } },
    { ...message, words: Object.fromEntries(Object.entries(ENGLISH).slice(1)) },
    { ...message, plan: { ...plan, system: 'other' } },
    { ...message, plan: { ...plan, notes: [1] } },
    { ...message, plan: { ...plan, legend: [{ key: 'a', sign: { mark: 'skull' }, text: '' }] } },
    { ...message, plan: { ...plan, sections: [{ key: 'a' }] } },
    withShape({ kind: 'script' }),
    withShape({ content: 'toString' }),
    withShape({ loops: [[1, 2]] }),
    withShape({ loops: [[1, 2, Number.NaN]] }),
    withShape({ stale: 'yes' }),
    withShape({ numbered: { x: 0 } }),
    withShape({ kind: 'rows', form: [0, 0, 0], runs: [[0, 0, 0, 0, 0, -1]] }),
    withShape({ kind: 'rows', form: [0, 0, 0], runs: [[0, 0, 0, 0, 0, 1.5]] }),
    withShape({ kind: 'text', x: 0, y: 0, text: {}, turn: 0, anchor: 'start', rank: 1 }),
    withShape({ kind: 'mark', x: 0, y: 0, sign: 'constructor' }),
    withThing({ facts: [['a']] }),
    withThing({ bounds: [0, 0, 1] }),
    withThing({ handle: { x: 0, y: Infinity } }),
    withThing({ leads: 1 }),
    { kind: 'patch', number: 4, since: 3, patch: { shapes: { gone: [1], put: [] } } },
    { kind: 'patch', number: 4, since: 3, patch: { things: { gone: [], put: [{ item: {} }] } } },
    { kind: 'at-cursor', things: 'area' },
    { kind: 'section', drawing: 'svg', text: '' }
  ])('is nothing else, to the page: %#', said => {
    expect(isToPlan(said)).toBe(false);
  });

  test.each([
    { kind: 'ready' },
    { kind: 'open', thing: 'a' },
    { kind: 'select', thing: '' },
    { kind: 'drag', thing: 'a', to: [1, 2.5] },
    { kind: 'section', along: { key: 'a' } },
    { kind: 'section', along: { from: [0, 0], to: [1, 1] } }
  ])('is what they say, to the client: %j', said => {
    expect(isFromPlan(said)).toBe(true);
  });

  test.each([
    undefined,
    7,
    { kind: 'open', uri: 'file:///etc/passwd' },
    { kind: 'drag', thing: 'a', to: [1] },
    { kind: 'drag', thing: 'a', to: [1, Number.NaN] },
    { kind: 'drag', thing: 'a', to: [1, '2'] },
    { kind: 'section', along: { from: [0, 0] } },
    { kind: 'run', command: 'x' }
  ])('is nothing else, to the client: %j', said => {
    expect(isFromPlan(said)).toBe(false);
  });

  test('is kept as it was', () => {
    expect(isPlanState(state)).toBe(true);
    expect(isPlanState({ ...state, view: { x: 1, y: 2, pixelsPerMetre: 40 } })).toBe(true);
    expect(isPlanState({ ...state, view: { x: 1, y: 2, pixelsPerMetre: 0 } })).toBe(false);
    expect(isPlanState({ ...state, hidden: ['everything'] })).toBe(false);
    expect(isPlanState({ ...state, turn: 'left' })).toBe(false);
    expect(isPlanState({ about: 'a', scroll: 1 })).toBe(false);
  });
});

describe('A patch', () => {
  const item = (key: string, text = key): LiveShape => ({
    ...{ kind: 'text', key, content: 'names', ink: 'text', thing: '', x: 0, y: 0 },
    ...{ text, turn: 0, anchor: 'start', rank: 0 }
  });
  const before = { ...plan, shapes: ['a', 'b', 'c', 'd'].map(key => item(key)) };
  const keys = (patch: Parameters<typeof applyPatch>[1]): string[] =>
    applyPatch(before, patch).shapes.map(({ key }) => key);

  test('takes away, replaces where it stands, and puts before another or last', () => {
    expect(keys({ shapes: { gone: ['b', 'nothing'], put: [] } })).toEqual(['a', 'c', 'd']);
    expect(keys({ shapes: { gone: [], put: [{ item: item('e'), before: 'b' }, { item: item('f') }] } })).toEqual([
      ...['a', 'e', 'b', 'c', 'd', 'f']
    ]);
    expect(keys({ shapes: { gone: ['a'], put: [{ item: item('a'), before: 'd' }] } })).toEqual(['b', 'c', 'a', 'd']);
    const replaced = applyPatch(before, { shapes: { gone: [], put: [{ item: item('b', 'new') }] } }).shapes;
    expect(replaced.map(shape => shape.kind === 'text' && shape.text)).toEqual(['a', 'new', 'c', 'd']);
    expect(replaced[0]).toBe(before.shapes[0]);
  });

  test('as the server makes it leads from any plan to any other', () => {
    const order = fc.shuffledSubarray(plan.shapes.map((_, index) => index));
    const some = fc.record({ order, titled: fc.boolean(), moved: fc.nat(30) }).map(({ order, titled, moved }) => ({
      ...plan,
      title: titled ? 'Other' : plan.title,
      shapes: order.map(index => (index === moved ? { ...plan.shapes[index]!, ink: 'other' } : plan.shapes[index]!)),
      things: plan.things.filter((_, index) => order.includes(index))
    }));
    fc.assert(
      fc.property(some, some, (one, other) => {
        expect(applyPatch(one, patchBetween(one, other))).toEqual(other);
      }),
      { seed: 20_260_502, numRuns: 200 }
    );
  });

  test('of nothing changes nothing', () => {
    expect(applyPatch(before, {})).toEqual(before);
    expect(applyPatch(before, { title: '', notes: ['n'] })).toEqual({ ...before, title: '', notes: ['n'] });
  });
});

describe('A key', () => {
  const plain = { ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };

  test.each([
    ['ArrowUp', { do: 'go', way: [0, -1] }],
    ['+', { do: 'zoom', closer: true }],
    ['0', { do: 'fit' }],
    [']', { do: 'walk', by: 1 }],
    ['P', { do: 'walk', by: -1 }],
    ['Enter', { do: 'enter' }],
    ['g', { do: 'hold' }],
    ['Tab', undefined],
    ['toString', undefined]
  ])('means what it says: %s', (key, command) => {
    expect(commandOf({ ...plain, key })).toEqual(command);
  });

  test('with Control or Command is the editor’s, but for what is typed with Control and Alt', () => {
    expect(commandOf({ ...plain, key: 'p', ctrlKey: true })).toBeUndefined();
    expect(commandOf({ ...plain, key: '0', metaKey: true })).toBeUndefined();
    expect(commandOf({ ...plain, key: ']', ctrlKey: true, altKey: true })).toEqual({ do: 'walk', by: 1 });
  });
});

describe('A tool', () => {
  test('measures between two places and then anew', () => {
    const begun = { kind: 'measure', cross: { x: 0, y: 0 } } as const;
    const one = withPlace(begun, { x: 100, y: 0 });
    const two = withPlace(one, { x: 400, y: 400 });
    expect(toolWords(one, ENGLISH, 'metric')).toContain('choose the second point');
    expect(toolWords(two, ENGLISH, 'metric')).toBe(
      'Distance 0.500 m: 0.300 m along x, 0.400 m along y. Taken from the plan: check it on site.'
    );
    expect(withPlace(two, { x: 1, y: 1 })).toEqual(withPlace(begun, { x: 1, y: 1 }));
  });

  test('that moves something says where to, and shows it', () => {
    const tool: Tool = {
      ...{ kind: 'move', thing: 'box:valves', name: 'valves', from: { x: 0, y: 0 }, to: { x: 304.8, y: 25.4 } },
      byKeys: true,
      isAsked: false
    };
    expect(toolWords(tool, ENGLISH, 'imperial')).toMatch(/^valves to x 1 ft, y 1 in\. Arrows/);
    const view = { x: 0, y: 0, scale: 1, turn: 0 };
    expect(toolSigns(tool, view, { width: 0, height: 0 }, 'imperial').label?.text).toBe('1 ft, 1 in');
    expect(toolWords(NO_TOOL, ENGLISH, 'metric')).toBe('');
  });
});

test('Words that are filled in stay words', () => {
  expect(fillIn('{0} and {1}, {2}', '{1} $&', 'b')).toBe('{1} $& and b, {2}');
});
