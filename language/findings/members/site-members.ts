import { saying } from '../limits.ts';
import { type Member, words } from './member.ts';

/** What rules can look at in the site, and in everything that stands on it. */
export const SITE_MEMBERS: readonly Member<'site'>[] = [
  {
    ...words('site', 'soil', 'The kind of soil'),
    read: ({ judged: { site } }) => site && [site.soil.name],
    at: () => 'site'
  },
  {
    ...words('site', 'drainage', 'How the ground drains', ['well', 'poorly']),
    read: ({ judged: { site } }) => site && [site.drains]
  },
  {
    ...words('site', 'frost-heave', 'Whether the soil heaves in frost', ['likely', 'unlikely']),
    read: ({ judged: { site } }) => site && [site.soil.heavesInFrost ? 'likely' : 'unlikely']
  },
  {
    ...words('site', 'winters', 'Whether winters freeze, where the site says so', ['freeze', 'mild']),
    read: ({ judged: { site } }) => (site?.winters === undefined ? [] : [site.winters]),
    at: () => 'site',
    write: (_, to) => (typeof to === 'string' ? [saying('site/winters', `winters ${to}`)] : [])
  },
  {
    name: 'bearing',
    of: 'site',
    measure: '',
    print: 'share',
    describe: 'California bearing ratio of the ground, where it was measured',
    read: ({ judged }) => judged.site?.bearing?.value,
    at: () => 'site/bearing'
  },
  {
    name: 'topsoil',
    of: 'site',
    measure: 'm',
    print: 'fine',
    describe: 'Thickness of the topsoil, where the site says so',
    read: ({ judged }) => judged.site?.topsoil?.value,
    at: () => 'site/topsoil'
  },
  {
    name: 'ground-level',
    of: 'site',
    measure: 'm',
    print: 'fine',
    describe: 'Height of the ground against its benchmark, where the site says so',
    read: ({ judged }) => judged.site?.ground?.above.value,
    at: () => 'site/ground'
  },
  {
    ...words('site', 'ground-heights', 'Whether heights of the ground were taken at points', ['measured']),
    read: ({ judged: { site } }) => (site?.heights?.ground[0] === undefined ? [] : ['measured'])
  },
  {
    ...words('site', 'planning', 'What the site answers about leave to build'),
    read: ({ judged: { site } }) => (site?.planning === undefined ? [] : [site.planning])
  }
];
