import type { LevelSheetWords } from '../job/heights.ts';
import * as ast from '../syntax/generated/ast.ts';
import type { Expression } from './amounts.ts';
import { ANY, NOT_NEGATIVE, type Context } from './context.ts';
import type { Heights } from './heights.ts';
import type { SpecText } from './names.ts';
import { saidOnce, takingOut } from './said-once.ts';

/** Reads how the sheet of heights is to be printed. */
export class LevelSheets {
  private readonly context: Context;
  private readonly heights: Heights;

  constructor(context: Context, heights: Heights) {
    this.context = context;
    this.heights = heights;
  }

  /** Of a job: what it leaves out is as usual. */
  read(texts: readonly SpecText[]): LevelSheetWords {
    const sheets = texts.flatMap(text =>
      text.parsed.root.elements.filter(ast.isLevelSheet).map(node => ({ text, node }))
    );
    const [first, ...others] = sheets;
    if (first === undefined) return {};
    for (const { text, node } of others)
      this.context.fault(
        text,
        'level-sheet',
        node,
        'said-twice',
        'The level sheet is described twice; the first counts. Put both together.',
        {
          harmless: true,
          related: [{ node: first.node, text: first.text, message: 'Said first here.' }],
          fixes: [takingOut(this.context, text, node, { like: first.node })]
        }
      );
    if (this.context.isBroken(first.text, first.node)) return {};
    return this.context.watch(() => this.sheet(first.text, first.node)).value;
  }

  private sheet(text: SpecText, node: ast.LevelSheet): LevelSheetWords {
    const { context } = this;
    const key = context.place('level-sheet', text, node);
    const said = saidOnce(context, text, key, node.items, item => item.$type);
    const everyItem = said.get('SheetEvery') as ast.SheetEvery | undefined;
    const printedItem = said.get('SheetPrinted') as ast.SheetPrinted | undefined;
    const offsetItem = said.get('SheetOffset') as ast.SheetOffset | undefined;
    const every = everyItem && context.given(text, `${key}/every`, everyItem.spacing as Expression | undefined, 'm');
    const printed =
      printedItem &&
      context.word(text, key, printedItem, 'style', printedItem.style, [
        'millimetres',
        'inches',
        'decimal-feet'
      ] as const);
    const string = this.string(text, `${key}/string`, said.get('SheetString') as ast.SheetString | undefined);
    const offsetPoints =
      offsetItem &&
      context.given(text, `${key}/offset-points`, offsetItem.out as Expression | undefined, 'm', NOT_NEGATIVE);
    return {
      ...(every === undefined ? {} : { every }),
      ...(printed === undefined ? {} : { printed }),
      ...(string === undefined ? {} : { string }),
      ...(offsetPoints === undefined ? {} : { offsetPoints })
    };
  }

  /** To the fall above the finish, or level at a height. */
  private string(text: SpecText, key: string, item: ast.SheetString | undefined): LevelSheetWords['string'] {
    if (item === undefined) return undefined;
    if (item.above !== undefined) {
      const above = this.context.given(text, key, item.above as Expression, 'm', ANY);
      return above && { above };
    }
    const level = this.heights.read(text, key, item.height);
    return level && { level };
  }
}
