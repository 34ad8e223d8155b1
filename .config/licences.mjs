// The licences of the libraries that are bundled: what they ask is that their text goes along.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './bundles.mjs';

/** The folder of the library that a bundled file belongs to: one library may lie within another. */
const folderOf = file => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0];

/** The folders of the libraries of which the lists of bundled files name at least one file. */
export function librariesIn(lists) {
  const files = lists.flatMap(({ inputs }) => Object.keys(inputs));
  return [...new Set(files.map(folderOf).filter(folder => folder !== undefined))].sort();
}

/** One text: each library with its version, and the licence as it stands in its package. */
export function licenceTexts(folders) {
  return folders.map(licenceOf).join(`\n${'-'.repeat(80)}\n\n`);
}

function licenceOf(library) {
  const folder = path.join(root, library);
  const { name, version, license, author } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find(one => /^licen[cs]e(\.(txt|md))?$/i.test(one));
  const by = typeof author === 'string' ? author : author?.name;
  const text = file ? readFileSync(path.join(folder, file), 'utf8') : [license, by].filter(Boolean).join(', ');
  return `${name} ${version}\n\n${text.trim()}\n`;
}
