import { capital } from '../lowering/amounts.ts';
import { Names, type Declared } from '../lowering/names.ts';
import type { Project } from '../lowering/project.ts';
import { bookOfRule } from '../lowering/rule-leads.ts';
import type { Statement } from '../syntax/statement-tree.ts';
import { markdownText } from '../views/markdown.ts';
import { declarationOf, type Declaration } from './declaration.ts';
import { written } from './words.ts';

/** The `title` of a rule, rulebook or source. */
export function titleOf(declared: Declared): string | undefined {
  const declaration = declarationOf(declared);
  return declaration && textIn(declaration, 'title');
}

/** What a rule asks: the lines that say so, as written. */
export function asksOf({ parsed, statement }: Declaration): string[] {
  return statement.inside
    .filter(({ word }) => word === 'concerns' || word === 'when' || word === 'needs')
    .map(({ first, end }) => written(parsed, first, end));
}

/** In paragraphs: what a rule weighs, the rulebook that it belongs to, and where it comes from. */
export function weightAndSources(declared: Declared, project: Project): string {
  const declaration = declarationOf(declared);
  if (declaration === undefined) return '';
  const { parsed, statement } = declaration;
  const said = statement.inside.find(({ word }) => word === 'severity');
  const severity = said === undefined ? 'warning' : written(parsed, said.first + 1, said.end);
  const isSafety = statement.inside.some(({ word }) => word === 'safety');
  const book = bookOfRule(declared);
  const from = book === undefined ? "the job's own" : `rulebook ${titleOf(book) ?? book.name}`;
  const weight = `${capital(severity)}${isSafety ? ', about safety' : ''}; ${from}.`;
  const sources = sourcesOf(declared, project);
  return [markdownText(weight), ...(sources === '' ? [] : [sources])].join('\n\n');
}

/** What a rule or a rate cites; empty where it cites nothing. */
export function sourcesOf(declared: Declared, project: Project): string {
  const declaration = declarationOf(declared);
  const sources = declaration === undefined ? [] : citedIn(declared, declaration, project);
  return sources.length === 0 ? '' : `_Source: ${markdownText(sources.join('; '))}_`;
}

/** Each source once: its title, the place in it, and how that is known. */
function citedIn({ text }: Declared, { parsed, statement }: Declaration, project: Project): string[] {
  const names = new Names(project.visible);
  const all = statement.inside
    .filter(({ word, first, end }) => word === 'cites' && end > first + 1)
    .map(({ first, end }) => {
      const [name, ...others] = parsed.tokens.slice(first + 1, end).map(({ image }) => image);
      const source = names.peek(text, 'source', name!);
      const more = others.filter(image => image !== ',').map(image => image.replaceAll(/^"|"$/g, '').replace('-', ' '));
      return [(source && titleOf(source)) ?? name!.replaceAll('-', ' '), ...more].join(', ');
    });
  return [...new Set(all)];
}

/** What a source is, and which: `Handbook: Town paving leaflet`. */
export function sourceLine(declared: Declared): string | undefined {
  const declaration = declarationOf(declared);
  const said = declaration?.statement.inside.find(({ word }) => word === 'kind');
  if (declaration === undefined || said === undefined) return undefined;
  const kind = capital(written(declaration.parsed, said.first + 1, said.end).replaceAll('-', ' '));
  const title = textIn(declaration, 'title');
  return title === undefined ? kind : `${kind}: ${title}`;
}

/** The first paragraph that a rule says of itself. */
export function aboutOf(declaration: Declaration): string | undefined {
  return textIn(declaration, 'about');
}

function textIn({ parsed, statement }: Declaration, word: string): string | undefined {
  const said = statement.inside.find((each: Statement) => each.word === word);
  const text = said && parsed.tokens.slice(said.first, said.end).find(({ tokenType }) => tokenType.name === 'STRING');
  return text?.image.replaceAll(/^"|"$/g, '');
}
