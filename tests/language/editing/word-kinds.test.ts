import { expect, test } from 'vitest';
import { wordKindsIn } from '../../../language/editing/word-kinds.ts';
import { marked } from './marked.ts';

async function kinds(text: string): Promise<string[]> {
  const { look } = await marked({ 'a.paving': `‸${text}` });
  const lines = text.split('\n');
  return wordKindsIn(look).map(({ place, kind, declared, isDeclaration, isShipped }) => {
    const word = lines[place.line - 1]!.slice(place.column - 1, place.endColumn - 1);
    return [word, kind, declared?.kind, isDeclaration && 'declared', isShipped && 'ships'].filter(Boolean).join(' ');
  });
}

// A point called `in` that is declared nowhere is told as nothing.
test('each word is what it means where it stands: the same word a keyword here and a name there', async () => {
  expect(
    await kinds('let base = 150 mm // deep\narea bed {\n  base type-1 base\n  edges { to to in meets lawn, flush }\n}')
  ).toEqual([
    'let statement',
    'base name let declared',
    '= sign',
    '150 number',
    'mm measure',
    '// deep comment',
    'area statement',
    'bed name area declared',
    'base statement',
    'type-1 name material ships',
    'base name let',
    'edges statement',
    'to clause',
    'to clause',
    'meets clause',
    'lawn name side-kind ships',
    'flush clause'
  ]);
});

test('choices, sizes and texts', async () => {
  expect(
    await kinds(
      'unit u { size 8 x 4 x 2 3/8 in, made of clay }\nuse "a.paving"\narea a { traffic foot, cars\n paving u in stack-bond }'
    )
  ).toEqual([
    'unit statement',
    'u name unit declared',
    'size statement',
    '8 number',
    'x sign',
    '4 number',
    'x sign',
    '2 3/8 number',
    'in measure',
    'made statement',
    'of clause',
    'clay choice',
    'use statement',
    '"a.paving" text',
    'area statement',
    'a name area declared',
    'traffic statement',
    'foot choice',
    'cars choice',
    'paving statement',
    'u name unit',
    'in clause',
    'stack-bond name bond ships'
  ]);
});

test('of what could not be read nothing is guessed', async () => {
  expect(await kinds('area a {\n  nonsense foot 3 in\n  traffic foot cars\n  paving nowhere in\n}')).toEqual([
    'area statement',
    'a name area declared',
    'traffic statement',
    'paving statement',
    'in clause'
  ]);
});
