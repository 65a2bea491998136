// Number formatting.

/** A value with about three digits and a true minus sign. */
export function digits(value: number, count = 3): string {
  if (!Number.isFinite(value)) return "-";
  if (value === 0) return "0";
  const size = Math.floor(Math.log10(Math.abs(value)));
  const text = value.toFixed(Math.min(9, Math.max(0, count - 1 - size)));
  return text.replace("-", "\u2212");
}

/** The nearest of 1, 2, 5 times a power of ten that is not above the value. */
export function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  for (const digit of [5, 2, 1]) if (digit * power <= value * 1.000001) return digit * power;
  return power;
}

/** A round number that is not below the value, and whose fifth is also round. */
export function roundUp(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  for (const digit of [1, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5]) if (digit * power >= value * 0.999999) return digit * power;
  return 10 * power;
}
