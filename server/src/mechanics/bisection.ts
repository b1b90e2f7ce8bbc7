/**
 * Finds where a function changes sign, by halving an interval.
 *
 * Formula: the half that still shows the sign change is kept until the interval is as narrow as double precision allows.
 *
 * @param changes - f(x), any unit; must be finite at both ends and have opposite signs there
 * @param low - lower end of the interval, unit of x
 * @param high - upper end of the interval, unit of x, above `low`
 * @returns x at the sign change, unit of x, to about 1e-15 of the interval
 * @throws RangeError when the ends do not bracket a sign change: the caller's mistake
 *
 * Source: standard numerical method (for instance Press et al., Numerical Recipes, section 9.1, from memory).
 * Checked against: test/mechanics/bisection.test.ts.
 */
export function signChange(changes: (x: number) => number, low: number, high: number): number {
  let a = low;
  let b = high;
  const atA = changes(a);
  const atB = changes(b);
  if (atA === 0) return a;
  if (atB === 0) return b;
  if (!(atA < 0 && atB > 0) && !(atA > 0 && atB < 0)) {
    throw new RangeError(`signChange: no sign change between ${low} and ${high}`);
  }
  for (;;) {
    const middle = a + (b - a) / 2;
    if (middle <= a || middle >= b) return middle;
    if (changes(middle) > 0 === atA > 0) a = middle;
    else b = middle;
  }
}

/**
 * Finds the threshold above which a condition holds.
 *
 * Formula: halving, to a relative width of 1e-10.
 *
 * @param holds - condition on x; false below the threshold, true above it
 * @param low - a value, unit of x, where the condition does not hold, zero or above
 * @param high - a value, unit of x, where it holds, above `low`
 * @returns the threshold, unit of x
 * @throws RangeError when `high` is not above `low`: the caller's mistake
 *
 * Source: standard numerical method.
 * Checked against: test/mechanics/bisection.test.ts.
 */
export function threshold(holds: (x: number) => boolean, low: number, high: number): number {
  if (!(high > low)) throw new RangeError(`threshold: ${high} is not above ${low}`);
  let a = low;
  let b = high;
  while (b - a > 1e-10 * b) {
    const middle = a + (b - a) / 2;
    if (middle <= a || middle >= b) break;
    if (holds(middle)) b = middle;
    else a = middle;
  }
  return a + (b - a) / 2;
}
