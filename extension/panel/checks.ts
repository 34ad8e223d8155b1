// What messages between panels and editor are checked with, on either side.
import type { DrawnElement } from '../../server/protocol.ts';

export type Guard<T> = (value: unknown) => value is T;

export const isString = (value: unknown): value is string => typeof value === 'string';
export const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
export const isCount = (value: unknown): value is number => isNumber(value) && Number.isInteger(value) && value >= 0;
export const isFlag = (value: unknown): value is boolean => typeof value === 'boolean';

export function isList<T>(value: unknown, isItem: Guard<T>): value is readonly T[] {
  return Array.isArray(value) && value.every(isItem);
}

export type Plain = Readonly<Record<string, unknown>>;

export function isPlain(value: unknown): value is Plain {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export const isAbsentOr = <T>(value: unknown, isWanted: Guard<T>): value is T | undefined =>
  value === undefined || isWanted(value);

export function isDrawn(value: unknown): value is DrawnElement {
  return (
    isPlain(value) &&
    isString(value['name']) &&
    isPlain(value['attributes']) &&
    Object.values(value['attributes']).every(one => isString(one) || isNumber(one)) &&
    Array.isArray(value['inside']) &&
    value['inside'].every(part => isString(part) || isDrawn(part))
  );
}
