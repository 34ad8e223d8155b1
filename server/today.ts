/** Today where this machine stands, `2026-04-18`: the only place that asks a clock for the day. */
export function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
