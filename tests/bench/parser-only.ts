// The floor that `check` is measured against: builds the parser and reads one file, nothing more.
import { readFileSync } from 'node:fs';
import { createParse } from '../../language/syntax/parse.ts';

createParse()(readFileSync(process.argv[2]!, 'utf8'));
