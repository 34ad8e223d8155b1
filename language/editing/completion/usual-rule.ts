import type { Concern } from '../../job/rule.ts';
import type { System } from '../../job/job.ts';
import { concernHere } from './rules.ts';
import type { Scene } from './scene.ts';

type BothWays = Readonly<Record<System, string>>;

const alike = (pattern: string): BothWays => ({ imperial: pattern, metric: pattern });

/** By kind of thing how the statements that look at it are usually written behind their words. */
const OF_CONCERN: Readonly<Record<string, Readonly<Partial<Record<Concern, BothWays>>>>> = {
  when: {
    area: alike('[=traffic is foot]'),
    layer: alike('[=role is base]'),
    side: alike('[=holds is nothing]'),
    unit: alike('[=made-of is clay]'),
    material: alike('[=roles is base]'),
    site: alike('[=soil is clay]'),
    gate: alike('[=kind is gate]'),
    box: alike('[=use is in-use]'),
    pipe: alike('[=carries is gas]'),
    drain: alike('[=kind is channel]'),
    route: alike('[=clear-width is said]'),
    tape: alike('[=misfits is worst]'),
    reading: alike('[=layer is base]'),
    delivery: alike('[=wanted is said]')
  },
  needs: {
    area: { imperial: 'base at least [=4 in (100 mm)]', metric: 'base at least [=100 mm (4 in)]' },
    layer: { imperial: 'thickness at least [=1 in (25 mm)]', metric: 'thickness at least [=25 mm (1 in)]' },
    side: alike('[=edging is said]'),
    unit: { imperial: 'thickness at least [=2 3/8 in (60 mm)]', metric: 'thickness at least [=60 mm (2 3/8 in)]' },
    material: alike('[=grading is open]'),
    site: alike('[=winters is said]'),
    gate: alike('clearance at least [=wanted]'),
    box: { imperial: 'change at most [=1 in (25 mm)]', metric: 'change at most [=25 mm (1 in)]' },
    pipe: { imperial: 'below-dig at least [=12 in (300 mm)]', metric: 'below-dig at least [=300 mm (12 in)]' },
    drain: { imperial: 'finish-above at least [=1/8 in (3 mm)]', metric: 'finish-above at least [=3 mm (1/8 in)]' },
    route: alike('running at most [=1:20]'),
    tape: { imperial: 'misfit-size at most [=1/4 in (6 mm)]', metric: 'misfit-size at most [=6 mm (1/4 in)]' },
    reading: { imperial: 'above at most [=3/8 in (10 mm)]', metric: 'above at most [=10 mm (3/8 in)]' },
    delivery: alike('short at most [=0]')
  },
  says: {
    area: alike('"The base of " area " is " base "."'),
    layer: alike('"The " role " of " area " is " thickness " thick."'),
    side: alike('"[=Side] " side " of " area "."'),
    unit: alike('"The unit " unit " is " thickness " thick."'),
    material: alike('"[=The material] " material "."'),
    site: alike('"[=The soil is] " soil "."'),
    gate: alike('"[=The] " kind " " gate " clears the finish by " clearance "."'),
    box: alike('"[=The lid of] " box " changes by " change "."'),
    pipe: alike('"[=The pipe] " pipe " lies " below-dig " below the dig."'),
    drain: alike('"[=At] " drain " the finish stands " finish-above " above the grate."'),
    route: alike('"[=The route] " route " runs at " running "."'),
    tape: alike('"[=The tape] " tape " misfits by " misfit-size "."'),
    reading: alike('"[=Measured] " above " above the design at " place "."'),
    delivery: alike('"[=Of] " delivery " " still-to-come " are still to come."')
  },
  fix: {
    area: alike('base to needed'),
    layer: alike('thickness to needed'),
    side: alike('edging to usual-edging'),
    unit: alike('thickness to needed'),
    site: alike('winters to freeze')
  }
};

/** Whether a statement of a rule looks at the thing that `concerns` names. */
export function isOfConcern(word: string): boolean {
  return Object.hasOwn(OF_CONCERN, word);
}

/** How it is usually written where the cursor stands; undefined where no `concerns` stands above, or there is nothing to write. */
export function usualOfConcern(scene: Scene, word: string): string | undefined {
  const concern = concernHere(scene);
  return concern && OF_CONCERN[word]?.[concern]?.[scene.system];
}

const rule = (needs: string): Readonly<Record<string, string>> => ({
  title: '"[=Base too thin]"',
  severity: '[]',
  concerns: 'area',
  when: 'traffic is foot',
  needs: `base at least [=${needs}]`,
  says: '"The base of " area " is " base "; at least " needed " is needed."',
  fix: 'base to needed',
  cites: '[]',
  wrong: '',
  right: ''
});

/** A whole small rule, each statement as it is written behind its word. */
export const USUAL_RULE: Readonly<Record<System, Readonly<Record<string, string>>>> = {
  imperial: rule('4 in (100 mm)'),
  metric: rule('100 mm (4 in)')
};

const example = (size: string): readonly string[] => [
  'area terrace {',
  `  outline rectangle ${size}`,
  '  traffic foot',
  '  base    ',
  '}'
];

/** What its examples hold, all but the base. */
export const EXAMPLES: Readonly<Record<System, readonly string[]>> = {
  imperial: example('12 x 16 ft'),
  metric: example('4 x 3 m')
};

export const BASES: Readonly<Record<System, Readonly<Record<'wrong' | 'right', string>>>> = {
  imperial: { wrong: 'crushed-stone 3 in', right: 'crushed-stone 4 in' },
  metric: { wrong: 'type-1 75 mm', right: 'type-1 100 mm' }
};
