/** A spec of 10,000 lines has about 400,000 characters; beyond this one text would hold up everything else. */
export const MOST_CHARACTERS = 1_000_000;

/** Nobody nests brackets ten deep; the parser runs out of stack at a few hundred. */
export const MOST_NESTED = 50;

/** Nobody sets out so many corners; working with more would hold up everything else. */
export const MOST_SIDES = 1_000;

/** Terms of one sum; the parser runs out of stack at a few thousand. */
export const MOST_TERMS = 500;
