import type { Area, Job, System } from '../../job/job.ts';
import type { Cutting } from '../../laying/starts/cutting.ts';
import type { StartChange } from '../../laying/starts/start-change.ts';
import { printThickness } from '../../measures/print.ts';
import type { CuttingAdvice } from '../../quantities/cutting-advice.ts';
import { jointClause, lengthText, sawLengthText, sizeText, startClauses } from '../start-words.ts';
import type { Colours } from './colours.ts';
import { table } from './table.ts';

/** What to write so that there is less to cut, area by area, with the cuts as they are and as they would be. */
export function startsText({ areas, system }: Job, advice: readonly CuttingAdvice[], colours: Colours): string[] {
  const texts = advice.flatMap((one, index) => {
    const area = areas.find(({ key }) => key === one.area)!;
    const better = [
      ...one.starts.map(({ change, cutting }) => row(changeText(area, change, system), cutting, system)),
      ...(one.inboard === undefined
        ? []
        : [row(`inboard-cuts ${lengthText(one.inboard.least, system)}`, one.inboard.cutting, system)]),
      ...one.sizes.map(({ size, cutting }) => row(`rectangle ${sizeText(size, system)}`, cutting, system))
    ];
    const rows = better.length === 0 ? [] : [row('as it is', one.now, system), ...better];
    const lines = rows.length === 0 ? [nothingBetter(one.now)] : table(COLUMNS, rows, colours);
    return [...(index === 0 ? [] : ['']), `Area ${area.name}`, ...lines.map(line => `  ${line}`)];
  });
  return texts.length === 0 ? [] : [...texts, '', SLIVERS];
}

const SLIVERS = 'Slivers are narrower than 2 in (50 mm), and as long as a side of their unit.';

const COLUMNS = [
  { head: 'Change' },
  { head: 'Cut units', right: true },
  { head: 'Slivers', right: true },
  { head: 'Narrowest piece', right: true },
  { head: 'Sawing', right: true }
];

function row(written: string, { cutUnits, slivers, narrowest, sawLength }: Cutting, system: System): string[] {
  return [
    written,
    String(cutUnits),
    String(slivers),
    narrowest === undefined ? 'none' : printThickness(narrowest, system),
    sawLengthText(sawLength, system)
  ];
}

function nothingBetter({ cutUnits }: Cutting): string {
  if (cutUnits === 0) return 'no unit is cut';
  return `${cutUnits} ${cutUnits === 1 ? 'unit is' : 'units are'} cut; no better start was found`;
}

/** The clauses to write; what else the start says stays. */
function changeText({ start }: Area, change: StartChange, system: System): string {
  const clauses = startClauses(change, system);
  const said = start.key === undefined ? 'start' : 'start …,';
  const drops = start.shifted !== undefined && change.shifted !== undefined && !clauses.some(isShift);
  const parts = [
    ...(clauses.length === 0 ? [] : [`${said} ${clauses.join(', ')}`]),
    ...(drops ? ['no `shifted`'] : []),
    ...(change.joint === undefined ? [] : [`paving …, ${jointClause(change.joint, system)}`])
  ];
  return parts.join('; ');
}

function isShift(clause: string): boolean {
  return clause.startsWith('shifted');
}
