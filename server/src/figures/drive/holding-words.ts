import type { HoldingVerdict } from '../../mechanics/unpowered-holding.ts';

/** The unpowered verdict as a number whose lower end is the worse one, and in words. */
export const HOLDING_RANK: Readonly<Record<HoldingVerdict, number>> = { drops: 0, 'may-creep': 1, holds: 2 };

const word = (rank: number): string => (rank < 0.5 ? 'drops' : rank < 1.5 ? 'may creep' : 'holds');

interface Ends {
  readonly nominal: number;
  readonly low: number;
}

export const holdingInWords = ({ nominal, low }: Ends): string =>
  word(low) === word(nominal) ? word(nominal) : `${word(nominal)}; ${word(low)} at the worst end of what is uncertain`;

export const holdingHint = ({ nominal, low }: Ends): string => (word(low) === word(nominal) || low > 0 ? `off: ${word(low)}` : 'off: may drop');
