// What the editor's answers call by its name in the grammar is there: a rule that is called otherwise one day would be
// missed by nobody else, for the names are only text here.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { reflection } from '../../../language/syntax/generated/ast.ts';
import { BLOCKS } from '../../../language/syntax/words.ts';

const EDITING = path.resolve(import.meta.dirname, '../../../language/editing');
const GRAMMAR = readFileSync(path.resolve(EDITING, '../syntax/paving.langium'), 'utf8');

const rules: Readonly<Record<string, { readonly properties: object }>> = reflection.types;
const terminals = new Set([...GRAMMAR.matchAll(/^(?:hidden )?terminal (\w+)/gm)].map(([, name]) => name!));
/** Rules that read the same thing as another in another way. */
const inferring = new Map([...GRAMMAR.matchAll(/^(\w+) infers (\w+):/gm)].map(([, name, as]) => [name!, as!]));
const words = new Set([...[...GRAMMAR.matchAll(/'([a-z-]+)'/g)].map(([, word]) => word!), ...Object.keys(BLOCKS)]);

/** The names of the grammar in a source: `Rule`, `TERMINAL`, `Rule.property`, `word Rule.property`, `Rule property`. */
function namesIn(file: string): string[] {
  const names: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteral(node) && isName(node)) names.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, readFileSync(path.join(EDITING, file), 'utf8'), ts.ScriptTarget.Latest, true));
  return names;
}

function isName({ text, parent }: ts.StringLiteral): boolean {
  if (/^(?:[a-z-]+ )?[A-Z]\w+\.[a-z]\w*$/.test(text)) return true;
  const isKey = ts.isPropertyAssignment(parent) && parent.name.getText().slice(1, -1) === text;
  if (/^[A-Z]\w+ [a-z]+$/.test(text)) return isKey;
  const isCompared = ts.isBinaryExpression(parent) || ts.isCaseClause(parent) || ts.isCallExpression(parent);
  return isCompared && /^[A-Z]\w+$/.test(text);
}

function isInGrammar(name: string): boolean {
  const [, word, rule = '', property] = /^(?:([a-z-]+) )?(\w+)(?:[. ](\w+))?$/.exec(name)!;
  if (word !== undefined && !words.has(word)) return false;
  if (property === undefined && (terminals.has(rule) || inferring.has(rule))) return true;
  const read = inferring.get(rule) ?? rule;
  return read in rules && (property === undefined || property in rules[read]!.properties);
}

test('names of the grammar are the grammar’s own', () => {
  // What stands in `help` is for people.
  const files = readdirSync(EDITING, { recursive: true, encoding: 'utf8' }).filter(
    file => file.endsWith('.ts') && !file.startsWith('help')
  );
  const named = files.flatMap(file => namesIn(file).map(name => ({ file, name })));
  expect(named.length).toBeGreaterThan(80);
  expect(named.filter(({ name }) => !isInGrammar(name))).toEqual([]);
});

test('a name that the grammar does not have is found', () => {
  const made = ['Lair', 'Layer.thinness', 'Layer thinness', 'IDENT', 'beside Layer.thickness'];
  expect(made.filter(isInGrammar)).toEqual([]);
  expect(['Layer', 'Layer.thickness', 'Layer thickness', 'ID', 'base Layer.thickness'].every(isInGrammar)).toBe(true);
});
