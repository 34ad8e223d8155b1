/** Relative luminance and contrast as defined by WCAG 2.1. */
export function luminance(colour: string): number {
  const digits = colour.length === 4 ? [...colour.slice(1)].map(digit => digit + digit) : colour.slice(1).match(/../g)!;
  const [red, green, blue] = digits.map(pair => {
    const share = parseInt(pair, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

export function contrast(a: number, b: number): number {
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
