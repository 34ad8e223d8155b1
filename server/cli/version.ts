/** As in package.json, which a test compares: the bundle carries no copy of that file. */
export const VERSION = '0.1.0';
