import path from 'node:path';

/*
 * What an area's numbers are taken from, worked out from the names in the text alone: nothing of the product is asked.
 * A plain scan of well-formed samples, whose statements on top begin at the first column.
 */

interface Block {
  readonly file: string;
  /** `area`, `point`, … */
  readonly kind: string;
  readonly name: string;
  /** Lines from `first` up to but not including `end`, from 0. */
  readonly first: number;
  readonly end: number;
  /** Without comments and texts in quotes. */
  readonly lines: readonly string[];
}

interface Use {
  readonly from: string;
  readonly to: string;
  readonly line: number;
}

/** A line of a file, from 0. */
export type Line = `${string}:${number}`;

const NAME = /[\p{L}_][\p{L}\p{N}_]*(?:-[\p{L}\p{N}_]+)*/gu;
/** The site, the ground as it was measured, what lies on it and what was done: every area is taken from them. */
const EVERYWHERE = new Set(['site', 'heights', 'existing', 'log', 'level-sheet']);
const IN_AREAS = new Set(['box', 'pit', 'inset', 'drain']);
const NAMED = new Set(['let', 'point', 'unit', 'material', 'soil-kind', 'side-kind', 'bond', 'line', 'drain']);

/** For each area of a job the lines that its numbers are taken from. */
export function linesOfAreas(main: string, texts: ReadonlyMap<string, string>): Map<string, ReadonlySet<Line>> {
  const blocks = [...texts].flatMap(([file, text]) => blocksOf(file, text));
  const uses = [...texts].flatMap(([file, text]) => usesOf(file, text));
  const areas = blocks.filter(block => block.kind === 'area');
  return new Map(areas.map(area => [area.name, linesOf(area, main, blocks, uses)]));
}

function linesOf(area: Block, main: string, blocks: readonly Block[], uses: readonly Use[]): Set<Line> {
  const areaNames = new Set(blocks.filter(block => block.kind === 'area').map(block => block.name));
  const taken = new Set<Block>([area]);
  // A thing named in one file and declared in another is seen through the uses between them.
  const seenFrom: [string, string][] = [[main, area.file]];

  const take = (block: Block, from: string): void => {
    seenFrom.push([from, block.file]);
    if (taken.has(block)) return;
    taken.add(block);
    if (block.kind !== 'area') takeNames(block, block.lines);
  };
  const takeNames = (user: Block, lines: readonly string[]): void => {
    for (const line of lines) {
      const like = /^\s*(\S+)\s+as\s+(\S+)/.exec(line);
      const other = like && blocks.find(block => block.kind === 'area' && block.name === like[2]);
      if (other) {
        take(other, user.file);
        takeNames(
          other,
          other.lines.filter(one => one.trimStart().split(/\s/)[0] === like[1])
        );
        continue;
      }
      const met = /\bmeets\s+(\S+?)(?:,|\s|$)/.exec(line)?.[1];
      for (const [word] of line.matchAll(NAME)) {
        if (word === met && areaNames.has(word)) continue;
        for (const block of blocks) if (NAMED.has(block.kind) && block.name === word) take(block, user.file);
        // A benchmark is declared in the site, which every area is taken from; it is seen from where it is named.
        for (const site of blocks) if (site.kind === 'site' && declaresBenchmark(site, word)) take(site, user.file);
      }
    }
  };

  // How an area lies to those beside it, and where it is dug with them, is taken from both.
  const beside = blocks.filter(block => block.kind === 'area' && block !== area && areBeside(area, block));
  for (const one of [area, ...beside]) {
    take(one, main);
    takeNames(one, one.lines);
    for (const block of blocks) if (IN_AREAS.has(block.kind) && inArea(block) === one.name) take(block, main);
  }
  for (const block of blocks) {
    if (EVERYWHERE.has(block.kind)) take(block, main);
    if (block.kind === 'job' && (saysWhatIsBought(block) || leansOnTheUsual(area, blocks))) take(block, main);
  }
  const lines = new Set<Line>();
  for (const block of taken) for (let line = block.first; line < block.end; line++) lines.add(`${block.file}:${line}`);
  for (const use of uses) {
    const without = uses.filter(other => other !== use);
    if (seenFrom.some(([from, to]) => reaches(from, to, uses) && !reaches(from, to, without)))
      lines.add(`${use.from}:${use.line}`);
  }
  return lines;
}

function declaresBenchmark(site: Block, name: string): boolean {
  return site.lines.some(line => line.trim().startsWith(`benchmark ${name}`));
}

function areBeside(one: Block, other: Block): boolean {
  return meets(one, other.name) || meets(other, one.name);
}

function meets({ lines }: Block, name: string): boolean {
  return lines.some(line => line.match(/\bmeets\s+([\w-]+)/)?.[1] === name);
}

function inArea(block: Block): string | undefined {
  return / in (\S+)/.exec(block.lines[0]!)?.[1];
}

/** The units to buy of every area are taken from it. */
function saysWhatIsBought(job: Block): boolean {
  return job.lines.some(line => /^\s*(?:breakage|keep|saw-cut|offcuts)\b/.test(line));
}

/** What is not said is taken as usual in the country that the job names. */
function leansOnTheUsual(area: Block, blocks: readonly Block[]): boolean {
  const said = (word: string): string | undefined => {
    const line = area.lines.find(one => one.trimStart().split(/\s/)[0] === word);
    const like = line && /^\s*\S+\s+as\s+(\S+)/.exec(line);
    if (!like) return line;
    const other = blocks.find(block => block.kind === 'area' && block.name === like[1]);
    return other?.lines.find(one => one.trimStart().split(/\s/)[0] === word);
  };
  const [paving, bed, filler] = [said('paving'), said('bed'), said('joints')];
  const bare = ['bed', 'base', 'sub-base']
    .map(said)
    .some(line => line !== undefined && !/^\s*\S+\s+\S+\s+\S/.test(line));
  return (
    bed === undefined ||
    filler === undefined ||
    bare ||
    /^\s*geotextile\s*$/.test(said('geotextile') ?? '') ||
    !/\bjoints\b/.test(paving ?? '')
  );
}

function reaches(from: string, to: string, uses: readonly Use[]): boolean {
  const seen = new Set([from]);
  for (const at of seen) for (const use of uses) if (use.from === at) seen.add(use.to);
  return seen.has(to);
}

function usesOf(file: string, text: string): Use[] {
  return text.split('\n').flatMap((line, index) => {
    const written = /^use "([^"]+)"/.exec(line)?.[1];
    return written === undefined
      ? []
      : [{ from: file, to: path.posix.join(path.posix.dirname(file), written), line: index }];
  });
}

function blocksOf(file: string, text: string): Block[] {
  const lines = text.split('\n').map(line => line.replace(/"[^"]*"/g, '""').replace(/\/\/.*/, ''));
  const starts = lines.flatMap((line, index) => (/^[a-z]/.test(line) ? [index] : []));
  return starts.map(first => {
    const [kind = '', name = ''] = lines[first]!.match(/[^\s{]+/g) ?? [];
    let end = first + 1;
    let depth = depthOf(lines[first]!);
    while (depth > 0 && end < lines.length) depth += depthOf(lines[end++]!);
    return { file, kind, name, first, end, lines: lines.slice(first, end) };
  });
}

function depthOf(line: string): number {
  return line.split('{').length - line.split('}').length;
}
