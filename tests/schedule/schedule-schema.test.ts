import { readFile } from 'node:fs/promises';
import { format, type Options } from 'prettier';
import { expect, test } from 'vitest';
import type { Schema } from '../../language/views/json/schema.ts';
import { SCHEDULE_SCHEMA } from '../../language/views/json/schedule-schema.ts';

test('the schema file that ships is that of the schedule', async () => {
  const style = JSON.parse(await readFile('.config/prettier.json', 'utf8')) as Options;
  const shipped = await format(JSON.stringify(SCHEDULE_SCHEMA, undefined, 2), { ...style, parser: 'json' });
  await expect(shipped).toMatchFileSnapshot('../../language/views/json/schedule.schema.json');
});

test('every number of it says its measure', () => {
  const numbers: Schema[] = [];
  JSON.stringify(SCHEDULE_SCHEMA, (_, value: unknown) => {
    if (typeof value === 'object' && value !== null && (value as Schema)['type'] === 'number')
      numbers.push(value as Schema);
    return value;
  });
  expect(numbers.length).toBeGreaterThan(8);
  for (const { description } of numbers) expect(description).toMatch(/, (m|m3|kg|h|measure as named)$/);
});
