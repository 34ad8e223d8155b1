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
    throw new Failure(`no finding is called ${id}. ${helpFor(id)}`);
  }
  await write(pageOf(id).text.replace(/^# .*$/m, colours.strong), undefined);
}

/** A shorter part of a name is in too many of them. */
const SHORTEST_PART = 3;

/** A longer list is read by nobody. */
const MOST_NAMED = 8;

/** The name that was meant, and those of which a part begins with the word. */
function helpFor(word: string): string {
  const near = nearest(word, FINDING_IDS);
  const part = word.toLowerCase();
  const holding = part.length < SHORTEST_PART ? [] : FINDING_IDS.filter(id => `-${id}`.includes(`-${part}`));
  const names = [...new Set([...(near === undefined ? [] : [near]), ...holding])].slice(0, MOST_NAMED);
  if (names.length === 0) return 'For a list write: paving explain';
  return `Did you mean ${[names.slice(0, -1).join(', '), names.at(-1)!].filter(text => text !== '').join(' or ')}?`;
}
