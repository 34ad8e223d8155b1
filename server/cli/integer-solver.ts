import type { Highs, Model } from 'highs';
import type {
  IntegerModel,
  IntegerSolution,
  IntegerSolver,
  SolverLimit
} from '../../language/buying/integer-solver.ts';

let loaded: Promise<IntegerSolver> | undefined;

/**
 * Loads the solver of integer programmes, which is large: only where an order is asked for and its bound leaves it open,
 * and once for all of them.
 */
export function loadIntegerSolver(): Promise<IntegerSolver> {
  loaded ??= loadAnew();
  return loaded;
}

async function loadAnew(): Promise<IntegerSolver> {
  // The build leaves the library beside the bundle, with its WebAssembly: see `.config/build.mjs`.
  const library = await import('highs');
  // Its types tell of a module within a module; what it exports is the loader itself.
  const load = library.default as unknown as typeof library.default.default;
  const highs = await load();
  return (model, limit) => solved(highs, model, limit);
}

/** As the library tells that its solution keeps to all rows. */
const FEASIBLE = 2;

function solved(highs: Highs, { columns, rows }: IntegerModel, { nodes, seconds }: SolverLimit): IntegerSolution {
  const starts = [0];
  for (const { terms } of rows) starts.push(starts.at(-1)! + terms.length);
  const entries = rows.flatMap(({ terms }) => terms);
  const { integer, continuous } = highs.constants.variableType;
  return highs.withModel(
    {
      numCols: columns.length,
      numRows: rows.length,
      colCost: columns.map(({ cost }) => cost),
      colLower: columns.map(() => 0),
      colUpper: columns.map(({ most }) => within(most, highs)),
      rowLower: rows.map(({ least }) => within(least, highs)),
      rowUpper: rows.map(({ most }) => within(most, highs)),
      integrality: columns.map(({ whole }) => (whole ? integer : continuous)),
      matrix: {
        format: 'csr',
        numRows: rows.length,
        numCols: columns.length,
        starts,
        indices: entries.map(({ column }) => column),
        values: entries.map(({ by }) => by)
      }
    },
    model => {
      model.options.set({
        output_flag: false,
        mip_rel_gap: 0,
        mip_abs_gap: 0,
        mip_feasibility_tolerance: 1e-9,
        primal_feasibility_tolerance: 1e-9,
        mip_max_nodes: nodes,
        time_limit: seconds
      });
      model.run();
      return solution(
        model,
        columns.some(({ whole }) => whole),
        highs
      );
    }
  );
}

function solution(model: Model, isWhole: boolean, highs: Highs): IntegerSolution {
  const status = model.getModelStatus();
  if (status === highs.constants.modelStatus.infeasible) return { bound: Infinity };
  const bound = isWhole
    ? Number(model.info.get('mip_dual_bound'))
    : status === highs.constants.modelStatus.optimal
      ? model.getObjectiveValue()
      : -Infinity;
  if (Number(model.info.get('primal_solution_status')) !== FEASIBLE) return { bound };
  return { values: [...model.getSolution().colValue], bound };
}

function within(limit: number, { infinity }: Highs): number {
  return Math.max(-infinity, Math.min(infinity, limit));
}
