import { check, type Facts } from '../check.ts';

/** Bore may be that much larger than the shaft and still close on it when clamped, m. */
const PLAY = 0.1e-3;

const motorSide = ({ bounds }: Facts): boolean => {
  const play = bounds('coupling.motor-bore-play');
  return play !== undefined && (play.low > PLAY + 1e-9 || play.high < -1e-6);
};
/** A screw end that is not described can be turned down to a smaller bore, never up to a larger one; a described one fits or does not. */
function screwSide({ bounds }: Facts): boolean {
  const play = bounds('coupling.screw-bore-play');
  return play !== undefined && (play.low > PLAY + 1e-9 || (bounds('screw.journal-diameter') !== undefined && play.high < -1e-6));
}

export default check({
  id: 'coupling-bore-mismatch',
  title: 'Coupling does not fit the shaft',
  summary: 'A bore of the coupling is not the size of the shaft that goes into it.',
  place: (facts) => (motorSide(facts) ? 'coupling.motor-bore' : 'coupling.screw-bore'),
  basis: 'follows from the mechanics',
  sources: [{ title: 'a clamping hub closes on a play of about 0.1 mm; common practice, no published source' }],
  judge: (facts) => (motorSide(facts) || screwSide(facts) ? 'error' : undefined),
  because: ['motor.shaft-diameter', 'screw.journal-diameter', 'screw.major-diameter'],
  message: (facts) => {
    const { show, bounds } = facts;
    if (!motorSide(facts) && bounds('screw.journal-diameter')) {
      const tooLarge = (bounds('coupling.screw-bore-play')?.nominal ?? 0) > 0;
      return `Bore of ${show('coupling.screw-bore')} meets a turned end of ${show('screw.journal-diameter')}: ${tooLarge ? 'the hub cannot hold it' : 'it does not go on'}. Bore the coupling to ${show('screw.journal-diameter')}, or turn the end to the bore.`;
    }
    if (!motorSide(facts)) return `Bore of ${show('coupling.screw-bore')} is larger than the screw, ${show('screw.major-diameter')} outside: the hub cannot hold it. Take a bore of that size, or a smaller one with the end of the screw turned down.`;
    const loose = (bounds('coupling.motor-bore-play')?.nominal ?? 0) > 0;
    return `Bore of ${show('coupling.motor-bore')} meets a motor shaft of ${show('motor.shaft-diameter')}: ${loose ? 'the hub runs out of true and slips' : 'it does not go on'}. Take a coupling with a bore of ${show('motor.shaft-diameter')}.`;
  },
});
