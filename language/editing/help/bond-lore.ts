import { help, type Helps } from './help.ts';

export const BOND_LORE: Helps = {
  'running-bond': help(
    'Each course is shifted against the one before it',
    'For paths, terraces and drives. Under wheels the courses lie across the way they run (common practice).'
  ),
  'stack-bond': help(
    'Units in straight lines both ways; the joints go through',
    'For people on foot only: its joints open under wheels (common practice).'
  )
};
