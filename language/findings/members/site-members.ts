import { saying } from '../limits.ts';
import { type Member, words } from './member.ts';

/** What rules can look at in the site, and in everything that stands on it. */
export const SITE_MEMBERS: readonly Member<'site'>[] = [
  {
    ...words('site', 'soil', 'The kind of soil'),
    read: ({ judged }) => [judged.area.site.soil.name],
    at: () => 'site'
  },
  {
    ...words('site', 'drainage', 'How the ground drains', ['well', 'poorly']),
    read: ({ judged }) => [judged.area.site.drains]
  },
  {
    ...words('site', 'frost-heave', 'Whether the soil heaves in frost', ['likely', 'unlikely']),
    read: ({ judged }) => [judged.area.site.soil.heavesInFrost ? 'likely' : 'unlikely']
  },
  {
    ...words('site', 'winters', 'Whether winters freeze, where the site says so', ['freeze', 'mild']),
    read: ({ judged }) => (judged.area.site.winters === undefined ? [] : [judged.area.site.winters]),
    at: () => 'site',
    write: (_, to) => (typeof to === 'string' ? [saying('site/winters', `winters ${to}`)] : [])
  },
  {
    name: 'bearing',
    of: 'site',
    measure: '',
    print: 'share',
    describe: 'California bearing ratio of the ground, where it was measured',
    read: ({ judged }) => judged.area.site.bearing?.value,
    at: () => 'site/bearing'
  },
  {
    name: 'topsoil',
    of: 'site',
    measure: 'm',
    print: 'fine',
    describe: 'Thickness of the topsoil, where the site says so',
    read: ({ judged }) => judged.area.site.topsoil?.value,
    at: () => 'site/topsoil'
  },
  {
    name: 'ground-level',
    of: 'site',
    measure: 'm',
    print: 'fine',
    describe: 'Height of the ground against its benchmark, where the site says so',
    read: ({ judged }) => judged.area.site.ground?.above.value,
    at: () => 'site/ground'
  }
];
