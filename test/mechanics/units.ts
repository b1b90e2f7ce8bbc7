/** Customary units of printed examples, in SI. */

/** Degrees in rad. */
export const degrees = (angle: number): number => (angle * Math.PI) / 180;
/** Turns per minute in rad/s. */
export const perMinute = (speed: number): number => (speed * 2 * Math.PI) / 60;
/** Kilometres per hour in m/s. */
export const kilometresPerHour = (speed: number): number => speed / 3.6;
