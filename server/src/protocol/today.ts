/** How often the clock is looked at, in milliseconds: a computer that slept over midnight is noticed soon after. */
const OFTEN = 5 * 60_000;

/** The day of the computer's clock where it stands, YYYY-MM-DD. */
export function localDay(now = new Date()): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${String(now.getFullYear()).padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Tells when another day has come, for as long as the process lives; it keeps no process alive. */
export function onNewDay(today: () => string, tell: () => void, often = OFTEN): () => void {
  let last = today();
  const timer = setInterval(() => {
    const now = today();
    if (now === last) return;
    last = now;
    tell();
  }, often);
  // In Node a timer keeps the process alive; in a browser it is a number.
  if (typeof timer === 'object') timer.unref();
  return () => clearInterval(timer);
}
