import { Command, CommanderError } from 'commander';
import { addCheck } from './check.ts';
import { addCompare } from './compare.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { complain, Failure } from './fail.ts';
import { addFormat } from './format.ts';
import { addGitDiff } from './git-diff.ts';
import { addNew } from './new.ts';
import { allowClosedOutput } from './output.ts';
import { addQuantities } from './quantities.ts';
import { addOrder } from './order.ts';
import { addSchedule } from './schedule.ts';
import { addSheet } from './sheet.ts';
import { usageComplaint } from './usage.ts';
import { VERSION } from './version.ts';

const EXAMPLES = `
A job spec is a plain text file that ends in .paving: one job of concrete paving units on a sand bed on
crushed stone. Start with a few lines:

  job "Back terrace" { rules north-america }
  site { soil clay, winters freeze }
  unit slab-16 { size 16 x 16 x 2 in }
  area terrace {
    outline rectangle 18 x 12 ft
    traffic foot
    paving  slab-16 in running-bond
    base    crushed-stone 6 in
    edges {
      near     meets house-wall
      the rest meets lawn, edging spiked-strip
    }
  }

Examples:
  paving new terrace.paving               asks a few questions and writes the spec
  paving check terrace.paving             what is wrong, and where
  paving quantities terrace.paving        areas, layers, dig, units, edging
  paving quantities --workings jobs       and how each number came about
  paving draw -o plan.svg terrace.paving  the plan with every unit, cuts numbered
  paving sheet terrace.paving             every height, layer by layer
  paving schedule terrace.paving          tasks with hours, days and cautions
  paving compare terrace.paving           what the last edits come to
  paving format -w terrace.paving         lines everything up
  paving explain base-too-thin            what a finding means

More on a verb: paving check --help`;

function createProgram(): Command {
  const program = new Command('paving')
    .description('Checks job specs for paving and works out their quantities.')
    .usage('VERB [options] FILE…')
    .version(`paving ${VERSION}`, '-V, --version', 'show the version')
    .helpOption('-h, --help', 'show this help')
    .helpCommand(false)
    .commandsGroup('Verbs:')
    .addHelpText('after', EXAMPLES)
    .exitOverride()
    // What was wrong with the command is said once, below, in our own words.
    .configureOutput({ outputError: () => undefined, writeErr: text => process.stdout.write(text) })
    .configureHelp({ subcommandTerm: verb => verb.name() });
  for (const add of [
    addNew,
    addCheck,
    addQuantities,
    addDraw,
    addSheet,
    addOrder,
    addSchedule,
    addCompare,
    addGitDiff,
    addFormat,
    addExplain
  ])
    add(program);
  for (const verb of program.commands) verb.helpOption('-h, --help', 'show this help');
  return program;
}

async function run(): Promise<void> {
  allowClosedOutput();
  try {
    await createProgram().parseAsync();
  } catch (problem) {
    if (problem instanceof Failure) complain(problem.message);
    else if (!(problem instanceof CommanderError))
      complain('this program failed. Please report it with what you wrote here.');
    else if (problem.code.startsWith('commander.help') || problem.code === 'commander.version') return;
    else complain(usageComplaint(problem));
  }
}

void run();
