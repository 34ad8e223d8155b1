import { GrammarUtils, type AstNode } from 'langium';
import { listed } from '../../findings/listed.ts';
import type { Key } from '../../job/job.ts';
import * as ast from '../../syntax/generated/ast.ts';
import { LineStarts } from '../../syntax/line-starts.ts';
import type { Span } from '../../syntax/text-edit.ts';
import { capital, type Expression } from '../amounts.ts';
import { writtenOf } from '../context.ts';
import { isShipped, type Project } from '../project.ts';
import type { SpecText } from '../names.ts';
import { endMeasure } from '../points.ts';
import type { Told, ToldHandle, Why, WrittenPair } from './told-handle.ts';
import { NumberReader, type NotANumber, type WrittenNumber } from './written-number.ts';

/** The lengths and places of statements, as they can be written anew. */
export class PlaceReader {
  private readonly project: Project;
  private readonly numbers: NumberReader;
  private readonly lines = new Map<SpecText, LineStarts>();

  constructor(project: Project) {
    this.project = project;
    this.numbers = new NumberReader(project);
  }

  /** `what` the number is, in words: `x of B`. */
  number(text: SpecText, node: ast.Sum | ast.Value | undefined, what: string, list?: string): WrittenNumber | Why {
    const read = this.numbers.read(text, node as Expression | undefined, list);
    return 'because' in read ? { why: this.whyNot(text, read, node, what) } : read;
  }

  pair(text: SpecText, node: ast.Pair, of: string): WrittenPair | Why {
    const list = node.measure ?? endMeasure(node.y as Expression | undefined);
    const x = this.number(text, node.x, `x of ${of}`, list);
    if ('why' in x) return x;
    const y = this.number(text, node.y, `y of ${of}`, list);
    if ('why' in y) return y;
    const end = GrammarUtils.findNodeForKeyword(node.$cstNode, ')')?.end ?? node.$cstNode!.end;
    return { x, y, behind: { start: end, end: node.$cstNode!.end } };
  }

  /** `from`: the key under which the place is lowered. */
  spot(text: SpecText, node: ast.Spot | undefined, aside: ast.Aside | undefined, of: string, from: Key): ToldHandle {
    if (node === undefined) return { why: `The place of ${of} has an error: mend it first.` };
    if (ast.isPair(node)) return handle(text, this.pair(text, node, of), pair => ({ how: 'pair', pair }));
    if (ast.isFromLine(node)) return this.fromLine(text, node, aside, of, from);
    return this.fromPoint(text, node, of, from);
  }

  private fromLine(
    text: SpecText,
    node: ast.FromLine,
    aside: ast.Aside | undefined,
    of: string,
    from: Key
  ): ToldHandle {
    const line = writtenOf(node.line);
    const along = this.number(text, node.along, `how far ${of} lies along ${line}`);
    if ('why' in along) return along;
    const end = node.$cstNode!.end;
    if (aside === undefined) return { text, told: { how: 'along', spot: { along, end }, from } };
    const off = this.number(text, aside.off, `how far ${of} lies off ${line}`);
    if ('why' in off) return off;
    const word = spanOfWord(aside, 'where');
    if (word === undefined) return { why: `The place of ${of} has an error: mend it first.` };
    return { text, told: { how: 'along', spot: { along, aside: { off, where: aside.where, word }, end }, from } };
  }

  private fromPoint(text: SpecText, node: ast.FromPoint, of: string, from: Key): ToldHandle {
    const start = node.from?.$refText ?? '';
    if (node.towards !== undefined)
      return {
        why: `${capital(of)} lies from ${start} towards ${node.towards.$refText}: drag these, or change how far, in ${this.line(text, node)}.`
      };
    const away = this.number(text, node.away, `how far ${of} lies from ${start}`);
    if ('why' in away) return away;
    const turn = this.number(text, node.turn, `the angle at which ${of} lies from ${start}`);
    if ('why' in turn) return turn;
    return { text, told: { how: 'polar', spot: { away, turn }, from } };
  }

  /** `line 7`, of another file than the job's own `line 7 of site.paving`. */
  line(text: SpecText, node: AstNode): string {
    return this.lineAt(text, node.$cstNode?.offset ?? 0);
  }

  lineAt(text: SpecText, offset: number): string {
    return this.lineWords(text, [this.lineNumber(text, offset)]);
  }

  private lineWords(text: SpecText, lines: readonly number[]): string {
    const word = lines.length > 1 ? 'lines' : 'line';
    return `${word} ${listed(lines.map(String))}${text === this.project.main ? '' : ` of ${text.file}`}`;
  }

  private lineNumber(text: SpecText, offset: number): number {
    const lines = this.lines.get(text) ?? new LineStarts(text.parsed.text);
    this.lines.set(text, lines);
    return lines.lineOf(offset) + 1;
  }

  private whyNot(
    text: SpecText,
    { written, because, names }: NotANumber,
    node: AstNode | undefined,
    what: string
  ): string {
    const said = /^[xy] of /.test(what) ? what : capital(what);
    const here = node === undefined ? text.file : this.line(text, node);
    if (because === 'faulty') return `${said} has an error: mend it in ${here} first.`;
    if (because === 'lines') return `${said} is written over several lines: write it in one, and it can be dragged.`;
    if (names.length === 0)
      return `${said} is worked out, \`${written}\`: write what it comes to in ${here}, and it can be dragged.`;
    const values = [...new Map(names.map(name => [name.to.$refText, name])).values()];
    const words = values.map(({ to }) => to.$refText);
    return `${said} is worked out from ${listed(words)}: change ${words.length > 1 ? 'these' : 'that'}${this.whereLetsStand(text, words)}.`;
  }

  /** ` in line 7`, ` in lines 7 and 9 of site.paving`; nothing where one of them is none of one's own. */
  private whereLetsStand(text: SpecText, words: readonly string[]): string {
    const found = words.map(word => this.numbers.names.peek(text, 'let', word));
    if (found.some(one => one === undefined || isShipped(this.project, one.text))) return '';
    const texts = [...new Set(found.map(one => one!.text))];
    const places = texts.map(each => {
      const lines = found
        .filter(one => one!.text === each)
        .map(one => this.lineNumber(each, one!.node.$cstNode!.offset));
      return this.lineWords(
        each,
        [...new Set(lines)].sort((one, other) => one - other)
      );
    });
    return ` in ${listed(places)}`;
  }
}

export function handle<T extends object>(text: SpecText, read: T | Why, told: (read: T) => Told): ToldHandle {
  return 'why' in read ? read : { text, told: told(read) };
}

export function spanOfWord(node: AstNode, property: string): Span | undefined {
  const found = GrammarUtils.findNodeForProperty(node.$cstNode, property);
  return found && { start: found.offset, end: found.end };
}
