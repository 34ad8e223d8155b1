import type { Caution } from './contract.ts';
import { DUST_SOURCE, protectionFor } from './dust.ts';

/**
 * What to mind when sawing wet outdoors with a handheld saw, for so many hours of cutting in all, with shifts of so many
 * hours; all of a shift's cutting may fall to one person.
 */
export function dustCaution(cutting: number, shift: number, isBritish: boolean): Caution {
  const hours = Math.min(cutting, shift);
  const [now] = protectionFor([{ saw: 'handheld', where: 'outdoors', hours }]);
  const [over] = protectionFor([{ saw: 'handheld', where: 'outdoors', hours: Infinity }]);
  const first =
    now!.factor === 0
      ? 'up to 4 h a shift the table asks for none while the water feed works (wear one anyway)'
      : `at ${hours.toFixed(1)} h in one shift the table asks for a protection factor of ${now!.factor}`;
  const further =
    now!.factor === 0 ? `; over 4 h, all sawing of the shift together, for a protection factor of ${over!.factor}` : '';
  const [inside] = protectionFor([{ saw: 'handheld', where: 'indoors', hours }]);
  const closed = ` Indoors or in a closed place: a factor of ${inside!.factor} from the start.`;
  const british =
    ' In Britain: a factor of 20 (FFP3, or a half mask with P3 filters), fitted to the face and tested, besides water.';
  return {
    id: 'dust',
    text: `Dust of concrete and clay units holds quartz: split where that will do, saw wet, never dry. Respirator with a handheld saw outdoors: ${first}${further}.${closed}${isBritish ? british : ''}`,
    source: isBritish ? `${DUST_SOURCE}; HSE on cutting paving blocks, kerbs and flags` : DUST_SOURCE
  };
}
