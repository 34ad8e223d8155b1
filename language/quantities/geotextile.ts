import type { Material } from '../job/job.ts';
import { divide, type Expression, given, leaf, multiply, subtract } from './arithmetic.ts';
import type { GeotextileQuantities } from './contract.ts';
import { isSize } from './layer-volumes.ts';
import type { Book } from './page.ts';

/**
 * Geotextile on the bottom of the dig: strips side by side, each covering the roll width less one lap along its length.
 * Without roll width and lap its plain area.
 */
export function geotextileOf(material: Material, digArea: Expression, book: Book): GeotextileQuantities {
  const page = book.page('geotextile', '/geotextile');
  page.put('area', multiply(digArea, lapShare(material)));
  return { material: material.name, ...page.numbers };
}

const NO_LAPS = 'roll width and lap are not known: the plain area, without laps';

function lapShare({ roll, lap }: Material): Expression {
  if (roll === undefined || !isSize(lap) || roll.width.value <= lap.value)
    return leaf('share with laps', 1, '', { assumed: NO_LAPS });
  const width = given('roll width', roll.width, 'm');
  return divide(width, subtract(width, given('lap', lap, 'm')));
}
