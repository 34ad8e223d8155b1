import { BLOCKS, TOP_WORDS } from './words.ts';

// What the scanner looks for at a place; all but the last are tried where they are told to start.

export const SPACE = /[\s\u00a0]+/y;
export const COMMENT = /\/\/[^\n\r]*/y;
export const TEXT = /"[^"\n\r]*"/y;
/** Without the brace that may open a block at the line's end. */
export const OPEN_TEXT = /"[^"\n\r{]*/y;
/** A text between the quotes of word processors. */
export const CURLY_TEXT = /[“”„«][^“”„«»"\n\r]*[“”»"]/y;
/** Mixed numbers (`6 1/2`, `6-1/2`, `6½`), fractions, slopes (`1:60`), decimals. */
export const NUMBER =
  /[0-9]+(?:[ \t]+|-)[0-9]+\/[0-9]+|[0-9]+[ \t]?[½¼¾⅓⅔⅛⅜⅝⅞]|[½¼¾⅓⅔⅛⅜⅝⅞]|[0-9]+\/[0-9]+|[0-9]+(?:\.[0-9]+)?:[0-9]+(?:\.[0-9]+)?|[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+/y;
/** `2027-06-30`: year, month, day. */
export const DATE = /[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9-])/y;
/** `2,5`, `2,150.5`, `1.200,5`; in `4.4,12.5` the comma can only part two numbers. */
export const COMMA_NUMBER = /[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]+(?![.0-9])|[0-9]+(?:,[0-9]+)+(?:\.[0-9]+)?/y;
export const NAME = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*/uy;
export const SQUARE_OR_CUBIC =
  /(?:sq|cu)\.?[ \t]+(?:in|ft|yd|mm|m)(?![\p{L}\p{N}_-])|short[ \t]+tons?(?![\p{L}\p{N}_-])/iuy;
export const MEASURE_WORD = /[\p{L}]+[23²³]?/uy;
export const MEASURE_SIGN = /''|′′|’’|[%°'"″′’”]/y;
/** `x`, or `by` between sizes. */
export const SIZE_SIGN = /(?:[x×X]|by(?![\p{L}_-]))(?=[ \t]*(?:[0-9.(½¼¾⅓⅔⅛⅜⅝⅞]|[\n\r]|$))/iuy;

/** A comma and the word after it. */
export const COMMA_WORD = /,\s*([\p{L}_][\p{L}\p{M}\p{N}_]*(?:-[\p{L}\p{M}\p{N}_]+)*)/uy;
/** What follows a name at the start of an edge. */
export const NAME_GOES_ON = /[ \t]+(?:to|meets)(?![\p{L}\p{N}_-])|[ \t]*,/uy;
/** What follows the name of a point that is declared. */
export const POINT_GOES_ON = /\s+(?:at|halfway|taped)(?![\p{L}\p{N}_-])/uy;
/** `12'-6"`: the hyphen of the tape, not a minus. */
export const TAPE_HYPHEN = /[-−–‑](?=[0-9.½¼¾⅓⅔⅛⅜⅝⅞])/y;
/** `6-in`, `12-ft`. */
export const MEASURE_HYPHEN = /[-−–‑](?=(?:in|inch|inches|ft|foot|feet|yd|mm|cm|m)(?![\p{L}\p{N}_-]))/uy;
/** `6 in.`: the full stop of an abbreviation. */
export const ABBREVIATION_STOP = /\.(?![0-9])/y;

export const LINE_INDENT = /[ \t]*/y;
/** Braces, and what may hold some that don't count; a quote after a number is an inch mark. */
export const BRACES_AND_TEXTS = /(?<![0-9½¼¾⅓⅔⅛⅜⅝⅞])"[^"\n]*"|\/\/[^\n]*|[{}]/g;

/** A line that begins with a top-level word. */
export const TOP_LINE = lineWith([...TOP_WORDS]);

/** The same behind a rule, whose examples hold lines that begin with most of them. */
export const TOP_LINE_AFTER_RULE = lineWith(
  [...TOP_WORDS].filter(word => !Object.hasOwn(BLOCKS.example.statements, word))
);

/** The same behind a variant. */
export const TOP_LINE_AFTER_VARIANT = lineWith(
  [...TOP_WORDS].filter(word => word === 'variant' || !Object.hasOwn(BLOCKS.variant.statements, word))
);

function lineWith(words: readonly string[]): RegExp {
  return new RegExp(`^[ \\t]*(?:${words.join('|')})(?![\\p{L}\\p{N}_-])`, 'gmu');
}

/** A measure in feet. */
export const FEET = /^(?:ft|foot|feet|['′’])$/i;

/** Minus signs, dashes and hyphens as people and programs write them. */
export const MINUS_SIGNS = ['−', '–', '‑'];
