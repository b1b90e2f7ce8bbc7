import { parseBallScrewDesignation } from '../mechanics/ball-screw.ts';
import { contradictions, readDesignation, type GivenDimensions, type ThreadHand } from '../mechanics/thread-designation.ts';
import { trapezoidalGeometry } from '../mechanics/trapezoidal-thread.ts';
import { meaningOf } from './trapezoidal-size.ts';
import type { Bounded } from './values.ts';

/** An entry of the screw that says something else than its size does; lengths in m. */
export interface SizeContradiction {
  /** The entry's key: `lead`, `pitch-diameter`. */
  readonly entry: string;
  readonly bySize: number | string;
  readonly written: number | string;
}

/** What the description says of a screw, as far as it is known. */
export interface ScrewFacts {
  bounds(id: string): Bounded | undefined;
  choice(id: string): string | undefined;
}

const ENTRIES: Readonly<Record<keyof GivenDimensions, string>> = {
  majorDiameter: 'major-diameter', pitch: 'pitch', starts: 'starts', lead: 'lead', hand: 'hand', pitchDiameter: 'pitch-diameter', rootDiameter: 'root-diameter',
};

const nominal = (facts: ScrewFacts, entry: string): number | undefined => facts.bounds(`screw.${entry}`)?.nominal;
const handOf = (facts: ScrewFacts): ThreadHand | undefined => {
  const hand = facts.choice('screw.hand');
  return hand === 'left' || hand === 'right' ? hand : undefined;
};

/** Entries of the screw that contradict its size. An entry that is not written follows from the size and cannot contradict it. */
export function sizeContradictions(facts: ScrewFacts): readonly SizeContradiction[] {
  const size = facts.choice('screw.size');
  if (size === undefined) return [];
  const ball = parseBallScrewDesignation(size);
  if (ball.kind === 'ball screw') return ballContradictions(facts, ball);
  const meaning = meaningOf(size);
  if (!meaning) return [];
  if (facts.choice('screw.thread') !== 'trapezoidal') return [{ entry: 'thread', bySize: 'trapezoidal', written: facts.choice('screw.thread') ?? '' }];
  if (meaning.kind !== 'clear') {
    const lead = nominal(facts, 'lead');
    const major = nominal(facts, 'major-diameter');
    return [
      ...(meaning.lead !== undefined && lead !== undefined && differs(lead, meaning.lead) ? [{ entry: 'lead', bySize: meaning.lead, written: lead }] : []),
      ...(major !== undefined && Math.abs(major - meaning.majorDiameter) > 0.05 * meaning.majorDiameter ? [{ entry: 'major-diameter', bySize: meaning.majorDiameter, written: major }] : []),
    ];
  }
  const thread = trapezoidalGeometry(meaning.majorDiameter, meaning.pitch, meaning.starts);
  const found = contradictions(
    {
      majorDiameter: meaning.majorDiameter, pitch: meaning.pitch, starts: meaning.starts, lead: meaning.lead, hand: meaning.hand,
      pitchDiameter: thread.exists ? thread.pitchDiameter : undefined,
      rootDiameter: thread.exists ? thread.rootDiameter : undefined,
    },
    {
      majorDiameter: nominal(facts, 'major-diameter'), pitch: nominal(facts, 'pitch'), starts: nominal(facts, 'starts'), lead: nominal(facts, 'lead'),
      hand: handOf(facts), pitchDiameter: nominal(facts, 'pitch-diameter'), rootDiameter: nominal(facts, 'root-diameter'),
    },
  );
  return found.map(({ dimension, designated, given }) => ({ entry: ENTRIES[dimension], bySize: designated, written: given }));
}

function ballContradictions(facts: ScrewFacts, ball: { readonly nominalDiameter: number; readonly lead: number }): readonly SizeContradiction[] {
  const thread = facts.choice('screw.thread');
  if (thread !== undefined && thread !== 'ball') return [{ entry: 'thread', bySize: 'ball', written: thread }];
  const [lead, major] = [nominal(facts, 'lead'), nominal(facts, 'major-diameter')];
  return [
    ...(lead !== undefined && differs(lead, ball.lead) ? [{ entry: 'lead', bySize: ball.lead, written: lead }] : []),
    // Ball screws are ground or rolled a few tenths below their nominal diameter.
    ...(major !== undefined && Math.abs(major - ball.nominalDiameter) > 0.05 * ball.nominalDiameter ? [{ entry: 'major-diameter', bySize: ball.nominalDiameter, written: major }] : []),
  ];
}

const differs = (a: number, b: number): boolean => Math.abs(a - b) > 0.005 * b;

/** What of a nut's thread does not fit the screw; lengths in m. */
export interface NutMismatch {
  readonly what: 'thread' | 'diameter' | 'lead' | 'pitch' | 'hand';
  readonly nut: number | string;
  readonly screw: number | string;
}

/** Compares the thread written under `nut.size` with the screw's. A pitch that either leaves open is not compared. */
export function nutMismatch(facts: ScrewFacts): NutMismatch | undefined {
  const size = facts.choice('nut.size');
  const thread = facts.choice('screw.thread');
  if (size === undefined || thread === undefined) return undefined;
  const [major, lead, pitch] = [nominal(facts, 'major-diameter'), nominal(facts, 'lead'), nominal(facts, 'pitch')];
  const ball = parseBallScrewDesignation(size);
  if (ball.kind === 'ball screw') {
    if (thread !== 'ball') return { what: 'thread', nut: 'ball', screw: thread };
    return firstMismatch([['diameter', ball.nominalDiameter, major, 0.05], ['lead', ball.lead, lead, 0.005]]);
  }
  const written = readDesignation(size);
  if (!written) return undefined;
  if (thread === 'ball') return { what: 'thread', nut: 'trapezoidal', screw: thread };
  const meaning = meaningOf(size);
  const nutPitch = meaning?.kind === 'clear' ? meaning.pitch : written.pitch;
  const mismatch = firstMismatch([['diameter', written.majorDiameter, major, 0.05], ['lead', written.travelPerTurn, lead, 0.005], ['pitch', nutPitch, pitch, 0.005]]);
  if (mismatch) return mismatch;
  const hand = handOf(facts);
  return hand !== undefined && hand !== written.hand ? { what: 'hand', nut: written.hand, screw: hand } : undefined;
}

function firstMismatch(rows: readonly (readonly [NutMismatch['what'], number | undefined, number | undefined, number])[]): NutMismatch | undefined {
  for (const [what, nut, screw, slack] of rows) {
    if (nut !== undefined && screw !== undefined && Math.abs(nut - screw) > slack * screw) return { what, nut, screw };
  }
  return undefined;
}
