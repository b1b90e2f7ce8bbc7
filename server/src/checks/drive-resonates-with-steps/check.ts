import { check, type Facts } from '../check.ts';

/** Within this range of the resonance, steps shake the axis noticeably: amplification above 2 without damping. */
const NEAR = { low: 0.7, high: 1.4 } as const;

const near = ({ bounds }: Facts, id: string): boolean => {
  const value = bounds(id)?.nominal;
  return value !== undefined && value >= NEAR.low && value <= NEAR.high;
};

export default check({
  id: 'drive-resonates-with-steps',
  title: 'Steps near the axial resonance',
  summary: 'At working speed full steps or microsteps come at about the axial resonance of the drive.',
  place: 'motion.speed',
  figure: 'drive.axial-resonance',
  basis: 'our threshold',
  sources: [{ title: 'Den Hartog, Mechanical Vibrations', where: 'chapter 2', weak: true }],
  because: ['motion.speed', 'screw.lead', 'controller.microsteps'],
  judge: (facts) => (near(facts, 'drive.full-step-excitation') || near(facts, 'drive.microstep-excitation') ? 'information' : undefined),
  message: (facts) => {
    const steps = near(facts, 'drive.full-step-excitation') ? 'full steps' : 'microsteps';
    return `At ${facts.show('motion.speed')} the ${steps} come at about the axial resonance of ${facts.show('drive.axial-resonance', 'range')}: the axis may hum and leave ripples. Work at another speed, or stiffen the drive.`;
  },
});
