import { type Member, words } from './member.ts';

/** What rules can look at in a material of a layer, or of the joints. */
export const MATERIAL_MEMBERS: readonly Member<'material'>[] = [
  { ...words('material', 'material', 'The name of the material'), read: ({ material }) => [material.name] },
  {
    ...words('material', 'roles', 'Where it can be used', ['base', 'sub-base', 'bed', 'joint-filler']),
    read: ({ material }) => material.roles
  },
  {
    ...words('material', 'grading', '`open` is stone or grit without fines', ['dense', 'open']),
    read: ({ material }) => [material.openGraded ? 'open' : 'dense']
  },
  {
    ...density('compacted', 'Its density in place'),
    read: ({ material }) => material.compacted?.value,
    at: ({ material }) => material.compacted?.key
  },
  {
    ...density('loose', 'Its density as tipped'),
    read: ({ material }) => material.loose?.value,
    at: ({ material }) => material.loose?.key
  }
];

function density(name: string, describe: string) {
  return { name, of: 'material', measure: 'kg/m3', print: 'density', describe } as const;
}
