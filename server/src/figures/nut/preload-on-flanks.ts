interface Values {
  readonly preload: number | undefined;
  readonly design: string | undefined;
}

/** A nut in two halves presses them against each other whatever the load, in N: its flanks carry that too. */
export const preloadOnFlanks = ({ preload, design }: Values): number => (design === 'spring-loaded' || design === 'adjustable' ? (preload ?? 0) : 0);
