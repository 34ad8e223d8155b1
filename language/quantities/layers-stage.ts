import { baseOut, type Loop } from '../geometry/index.ts';
import type { Area, Buying } from '../job/job.ts';
import { type Expression, leaf, measured, subtract } from './arithmetic.ts';
import { basePast, stoneLayers } from './base-past.ts';
import { bedSteps } from './bed-steps.ts';
import { borderRows } from './border-rows.ts';
import type { NumbersOf } from './catalogue.ts';
import type {
  BorderRowQuantities,
  EdgingQuantities,
  GeotextileQuantities,
  LayerQuantities,
  LayingQuantities,
  Workings
} from './contract.ts';
import { digOf } from './dig.ts';
import { type FinishQuantities, finishOf } from './finish.ts';
import { type SoftSpotQuantities, softSpotsOf } from './soft-spots.ts';
import { edgingOf } from './edging.ts';
import { runningSizes } from './running-sizes.ts';
import { unitNamed } from './units-of-area.ts';
import { geotextileOf } from './geotextile.ts';
import { jointsOf } from './joints.ts';
import { bondOfPart, type LaidTotals } from './laying-stage.ts';
import { layingNumbers } from './laying-numbers.ts';
import { layerVolumes } from './layer-volumes.ts';
import { keptOutTogether, type OutlineNumbers } from './outline-stage.ts';
import { Book } from './page.ts';

/** An area without what only its laying and its rules read. */
export type LayeredArea = Omit<Area, 'traffic' | 'start'>;

/** What the layers stage reads: the area, its measured shapes, the units laid. */
export interface LayersInputs {
  readonly area: LayeredArea;
  readonly keptOut: readonly number[];
  readonly edgeLengths: readonly number[];
  readonly grossArea: number;
  readonly netArea: number;
  readonly laid?: LaidTotals;
  readonly buying: Pick<Buying, 'breakage'>;
}

export interface LayersNumbers {
  readonly overhangs: readonly { readonly overhang: number }[];
  readonly finish?: FinishQuantities;
  readonly dig: NumbersOf<'dig'>;
  readonly softSpots: readonly SoftSpotQuantities[];
  readonly geotextile?: GeotextileQuantities;
  readonly layers: readonly LayerQuantities[];
  readonly laying?: readonly LayingQuantities[];
  readonly borderRows?: readonly BorderRowQuantities[];
  /** As counted: rules look at more of it than stands in tables. */
  readonly laid?: LaidTotals;
  readonly runningSizes?: readonly NumbersOf<'running-size'>[];
  readonly joints?: NumbersOf<'joints'>;
  readonly edging: readonly EdgingQuantities[];
  /** The outline of the base and the dig, on the plan. */
  readonly baseLoops: readonly Loop[];
  readonly workings: Workings;
  /** Height of the ground above the underside of the layers where it is least, m. */
  readonly groundAboveLayers: number;
  /** Dug where nothing is known of the ground but how high it lies at the nearest place, m2. */
  readonly beyond: number;
  /** A number came out too large to be written down. */
  readonly overflowed: boolean;
}

export function layersInputs(
  area: Area,
  shapes: OutlineNumbers,
  laid: LaidTotals | undefined,
  { breakage }: Buying
): LayersInputs {
  const { traffic: _traffic, start: _start, ...layered } = area;
  return {
    area: layered,
    keptOut: shapes.keptOut.map(shape => shape.area),
    edgeLengths: shapes.edgeLengths.map(edge => edge.length),
    grossArea: shapes.area.grossArea,
    netArea: shapes.area.netArea,
    ...(laid === undefined ? {} : { laid }),
    buying: breakage === undefined ? {} : { breakage }
  };
}

/** Everything of an area that lies under, between and beside the units. */
export function layersStage(inputs: LayersInputs): LayersNumbers {
  const { area } = inputs;
  const book = new Book();
  const overhangs = overhangsOf(area, book);
  const base = baseOut(
    area.outline,
    overhangs.map(({ overhang }) => overhang)
  );
  const keptOut = keptOutTogether(
    area.key,
    inputs.keptOut.map((size, index) => leaf('kept-out area', size, 'm2', { pointer: `/keptOut/${index}/area` }))
  );
  const gross = leaf('gross area', inputs.grossArea, 'm2', { pointer: '/grossArea' });
  const baseArea = subtract(measured('area out to the edge of the base', base.area, 'm2', area.key), keptOut);
  const bedArea = subtract(gross, keptOut);
  const finish = finishOf(area, book);
  const shape = {
    area: baseArea,
    loops: base.loops,
    keptOut: area.keptOut.map(({ outline }) => outline),
    edgeLengths: inputs.edgeLengths,
    overhangs: overhangs.map(({ overhang }) => overhang)
  };
  const dig = digOf(area, shape, book);
  const softSpots = softSpotsOf(area, shape, book);
  const steps = bedSteps(area, inputs.laid);
  const layers = area.layers.map((layer, index) =>
    layer.role === 'bed'
      ? layerVolumes(layer, bedArea, steps, `/layers/${index}`, book)
      : layerVolumes(layer, baseArea, [], `/layers/${index}`, book)
  );
  return {
    overhangs,
    ...(finish === undefined ? {} : { finish }),
    dig: dig.numbers,
    softSpots,
    ...(area.geotextile === undefined ? {} : { geotextile: geotextileOf(area.geotextile, dig.area, book) }),
    layers,
    ...layingOf(inputs, book),
    edging: edgingOf(area.edges, inputs.edgeLengths, book),
    baseLoops: base.loops,
    workings: book.workings,
    groundAboveLayers: dig.groundAboveLayers,
    beyond: dig.beyond,
    overflowed: book.overflowed
  };
}

function overhangsOf(area: LayeredArea, book: Book): { overhang: number }[] {
  const stone = stoneLayers(area.layers);
  return area.edges.map((edge, index) => {
    const expression: Expression = basePast(edge, stone);
    book.page('edge', `/edges/${index}`).put('overhang', expression);
    return { overhang: expression.value };
  });
}

function layingOf(
  { area, laid, buying }: LayersInputs,
  book: Book
): Pick<LayersNumbers, 'laying' | 'laid' | 'borderRows' | 'runningSizes' | 'joints'> {
  if (area.paving === undefined || laid === undefined) return {};
  const laying = laid.units.map((totals, index): LayingQuantities => {
    const page = book.page('laying', `/laying/${index}`);
    layingNumbers(totals, area.key, buying, page);
    // The work is done for all kinds of units at once.
    if (index === 0) page.put('clipped', measured('units measured at the edge', laid.clipped, '', area.key));
    const bonds = new Set(totals.parts.map(part => bondOfPart(area, part)));
    const proven = totals.nested?.proven;
    return {
      unit: unitNamed(area, totals.unit).name,
      bond: [...bonds].join(', '),
      ...(proven === undefined ? {} : { proven }),
      ...page.numbers
    };
  });
  const sizes = laid.running && runningSizes(laid.running, area.key, book);
  const rows = borderRows(area, laid, book);
  return {
    laying,
    ...(rows.length === 0 ? {} : { borderRows: rows }),
    laid,
    ...(sizes === undefined ? {} : { runningSizes: sizes }),
    joints: jointsOf(area, laid, area.jointFiller, book)
  };
}
