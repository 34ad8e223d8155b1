import { fixTo } from '../limits.ts';
import { fromCatalogue } from './from-catalogue.ts';
import { type Member, words } from './member.ts';

/** What rules can look at in a layer. */
export const LAYER_MEMBERS: readonly Member<'layer'>[] = [
  {
    ...words('layer', 'role', 'What the layer is', ['bed', 'base', 'sub-base']),
    read: ({ layer }) => [layer.role],
    at: ({ layer }) => layer.key
  },
  {
    ...words('layer', 'material', 'The name of its material'),
    read: ({ layer }) => [layer.material.name],
    at: ({ layer }) => layer.key
  },
  {
    ...words('layer', 'grading', 'Grading of its material: `open` is stone or grit without fines', ['dense', 'open']),
    read: ({ layer }) => [layer.material.openGraded ? 'open' : 'dense'],
    at: ({ layer }) => layer.key
  },
  {
    name: 'thickness',
    of: 'layer',
    measure: 'm',
    print: 'fine',
    describe: 'Thickness of the finished layer',
    read: ({ layer }) => layer.thickness.value,
    at: ({ layer }) => layer.thickness.key ?? layer.key,
    write: ({ layer, judged }, to) => (typeof to === 'string' ? [] : fixTo(to, layer.thickness, judged.system))
  },
  ...fromCatalogue('layer', 'layer', ({ judged, index }) => judged.layers.layers[index], {
    at: ({ layer }) => layer.key
  })
];
