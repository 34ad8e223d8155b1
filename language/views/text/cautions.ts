/** What no rule here knows; said wherever a job passes. */
export function notChecked(isAnySetAside: boolean): string {
  const but = isAnySetAside ? ', but for what is set aside' : '';
  return `Passes the checks these rules know${but}; not checked: the ground itself, lines in the ground, what drains can take, local codes.`;
}

/** Said wherever cuts are told. */
export const CUTTING_CAUTION = 'Cut wet, with lungs, eyes and ears protected.';

/** Said wherever pipes are drawn or told. */
export const PIPES_CAUTION =
  'Pipes are shown as told, others may lie here: have them located, and dig by hand near them.';

/** Said wherever work is told. */
export const LOCAL_CODES = 'Local codes and licensed practice stand over everything here.';

/** Said once, at the end of all quantities. */
export const CAUTIONS: readonly string[] = [
  'Before digging have all public and private lines located: gas, power, water, drains, cables, irrigation.',
  CUTTING_CAUTION,
  LOCAL_CODES
];
