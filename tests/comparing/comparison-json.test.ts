import { readFile } from 'node:fs/promises';
import { format, type Options } from 'prettier';
import { expect, it } from 'vitest';
import { COMPARISON_SCHEMA } from '../../language/views/json/comparison-schema.ts';

it('the shipped schema file is that of the contract', async () => {
  const style = JSON.parse(await readFile('.config/prettier.json', 'utf8')) as Options;
  const shipped = await format(JSON.stringify(COMPARISON_SCHEMA, undefined, 2), { ...style, parser: 'json' });
  await expect(shipped).toMatchFileSnapshot('../../language/views/json/comparison.schema.json');
});
