/** A number such as `1.4` or `1.0` beside its limit: digits are added until it does not round onto or across the limit. */
export function numberBeside(value: number, limit: number): string {
  for (let digits = 2; digits < 6; digits++) {
    const rounded = Number(value.toPrecision(digits));
    // A zero that was rounded to is told: 1.0 for 1.03, since 1 would read as exactly that.
    const text = rounded < 10 && digits === 2 ? rounded.toFixed(rounded < 1 ? 2 : 1) : String(rounded);
    if (value === limit || Math.sign(rounded - limit) === Math.sign(value - limit)) return text;
  }
  return String(value);
}

/** The same as a multiple: `1.4×`. */
export const multipleBeside = (value: number, limit: number): string => `${numberBeside(value, limit)}×`;
