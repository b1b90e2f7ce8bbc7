import { endPair, type EndPair, type ShaftEnd } from '../mechanics/shaft-ends.ts';

/** The two ends of `screw.end-supports`, the motor's first. */
export function endsOf(choice: string): readonly [ShaftEnd, ShaftEnd] {
  const [motor, far] = choice.split('-') as [ShaftEnd, ShaftEnd];
  return [motor, far];
}

/** The arrangement that whirls: both ends as they are held. */
export const whirlingPair = (choice: string): EndPair | 'mechanism' => endPair(...endsOf(choice));

/**
 * The arrangement that buckles: from the end that takes the thrust to the nut. A nut that is bolted on rigidly is kept from moving
 * sideways by the guides and so holds a free far end there; a decoupled nut does not.
 */
export function bucklingEnds(choice: string, thrustEnd: string | undefined, mounting: string | undefined): readonly [ShaftEnd, ShaftEnd] {
  const [motor, far] = endsOf(choice);
  const [thrust, other] = thrustEnd === 'far' ? [far, motor] : [motor, far];
  return [thrust, other === 'free' && mounting === 'rigid' ? 'supported' : other];
}
