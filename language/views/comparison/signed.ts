/** With its sign, which stands before what is printed: `+0.40 t`, `−2`. */
export function signed(difference: number, print: (value: number) => string): string {
  return `${difference < 0 ? '−' : '+'}${print(Math.abs(difference))}`;
}
