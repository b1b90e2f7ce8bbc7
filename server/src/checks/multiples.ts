/** A multiple such as `1.4×` beside its limit: digits are added until it does not round onto or across the limit. */
export function multipleBeside(value: number, limit: number): string {
  for (let digits = 2; digits < 6; digits++) {
    const rounded = Number(value.toPrecision(digits));
    if (value === limit || Math.sign(rounded - limit) === Math.sign(value - limit)) return `${rounded}×`;
  }
  return `${value}×`;
}
