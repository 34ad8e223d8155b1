import type { Command } from 'commander';
import { nearest } from '../../language/syntax/nearest.ts';
import { table } from '../../language/views/text/table.ts';
import { Failure } from './fail.ts';
import { coloursFor, write } from './output.ts';
import { FINDING_IDS, pageOf } from './pages.ts';

export function addExplain(program: Command): void {
  program
    .command('explain')
    .usage('[ID]')
    .argument('[id]')
    .summary('explain a finding')
    .description('Shows the page about a finding: what it means, why it matters, a wrong and a right example.')
    .addHelpText('after', EXAMPLES)
    .action(explain);
}

const EXAMPLES = `
Examples:
  paving explain base-too-thin     what it means, why it matters, a wrong and a right example
  paving explain                   all findings there are`;

async function explain(id: string | undefined): Promise<void> {
  const colours = coloursFor(undefined);
  if (id === undefined) {
    const rows = FINDING_IDS.map(known => [known, pageOf(known).title]);
    await write(table([{ head: 'Finding' }, { head: 'What it is' }], rows, colours).join('\n'), undefined);
    return;
  }
  if (!FINDING_IDS.includes(id)) {
    const near = nearest(id, FINDING_IDS);
    const help = near === undefined ? 'For a list write: paving explain' : `Did you mean ${near}?`;
    throw new Failure(`no finding is called ${id}. ${help}`);
  }
  await write(pageOf(id).text.replace(/^# .*$/m, colours.strong), undefined);
}
