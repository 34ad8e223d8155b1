/** Marks text for the reader; what marks it (colour on a terminal, nothing in a file) is passed in. */
export interface Colours {
  strong(text: string): string;
  faint(text: string): string;
  error(text: string): string;
  warning(text: string): string;
  note(text: string): string;
}
