import type { SpecText } from '../../lowering/names.ts';
import { statementTree, type Statement } from '../../syntax/statement-tree.ts';

/** A material as a text declares it. */
export interface DeclaredMaterial {
  readonly name: string;
  readonly roles: readonly string[];
  readonly statement: Statement;
}

export function materialsIn({ parsed }: SpecText): DeclaredMaterial[] {
  const { tokens } = parsed;
  return statementTree(parsed)
    .filter(({ word, open }) => word === 'material' && open !== undefined)
    .map(statement => {
      const role = statement.inside.find(({ word }) => word === 'role');
      const words = role === undefined ? [] : tokens.slice(role.first + 1, role.end);
      return {
        name: tokens[statement.first + 1]!.image,
        roles: words.filter(({ image }) => image !== ',').map(({ image }) => image),
        statement
      };
    });
}
