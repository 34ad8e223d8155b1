import { readdirSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { contentsOf } from '../../../language/editing/contents.ts';
import { foldsIn } from '../../../language/editing/folding.ts';
import { highlightsAt } from '../../../language/editing/highlights.ts';
import { nameAt, placeOfDeclaration } from '../../../language/editing/names-at.ts';
import { placesInAll } from '../../../language/editing/references.ts';
import { renameableAt, renamed } from '../../../language/editing/rename.ts';
import { thingsNamed } from '../../../language/editing/search.ts';
import { selectionsAt } from '../../../language/editing/selection.ts';
import { usedPathAt } from '../../../language/editing/used-files.ts';
import { wordKindsIn } from '../../../language/editing/word-kinds.ts';
import { occurrencesIn } from '../../../language/lowering/occurrences.ts';
import { drain, Paving, type Look } from '../../../language/paving.ts';
import { NodeFiles } from '../../../server/node-files.ts';

const FOLDER = path.resolve(import.meta.dirname, '../../faulty');
const SPECS = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' }).filter(name => name.endsWith('.paving'));

test(
  'nothing throws at any place of any faulty spec, and every place told lies in the text',
  { timeout: 300_000 },
  async () => {
    const paving = new Paving(new NodeFiles({ root: FOLDER, shownFrom: FOLDER }));
    let asked = 0;
    for (const spec of SPECS) {
      const file = path.join(FOLDER, spec);
      await paving.load(file);
      const look = paving.look(file);
      if (look === undefined) continue;
      const lines = look.text.parsed.text.split('\n');
      for (const fold of foldsIn(look.text)) expect(fold.last, spec).toBeLessThanOrEqual(lines.length);
      for (const { name } of contentsOf(look.text)) expect(name, spec).not.toBe('');
      for (const { place } of wordKindsIn(look))
        expect(place.endColumn - 1, spec).toBeLessThanOrEqual(lines[place.line - 1]!.length);
      thingsNamed(look.text, 'a');
      for (let offset = 0; offset <= look.text.parsed.text.length; offset++) {
        asked++;
        growAt(look, offset);
      }
      for (const offset of turns(look)) askAt(look, offset);
      const things = occurrencesIn(look.text, look.project).filter(({ isDeclaration }) => isDeclaration);
      for (const { start } of things) drain(renamed([look], look, start, 'Жук', paving.parse));
    }
    expect(asked).toBeGreaterThan(10_000);
  }
);

function growAt(look: Look, offset: number): void {
  const spans = selectionsAt(look.text, offset);
  for (const [index, span] of spans.entries()) {
    const inner = spans[index - 1];
    if (span.start > offset || span.end < offset) throw new Error('A selection leaves its place.');
    if (inner !== undefined && (inner.start < span.start || inner.end > span.end))
      throw new Error('A selection shrinks.');
  }
}

/** Where words begin and end: between two letters of one word nothing differs. */
function turns({ text }: Look): Set<number> {
  const { tokens, comments } = text.parsed;
  return new Set(
    [...tokens, ...comments].flatMap(word => [word.startOffset - 1, word.startOffset, word.endOffset! + 1])
  );
}

function askAt(look: Look, offset: number): void {
  highlightsAt(look, offset);
  renameableAt([look], look, offset);
  usedPathAt(look.text, 1, offset);
  const declared = nameAt(look, offset)?.declared;
  if (declared === undefined) return;
  placeOfDeclaration(declared);
  placesInAll([look], declared);
}
