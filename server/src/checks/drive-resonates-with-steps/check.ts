import { check, type Facts } from '../check.ts';

/** Within this range of the resonance, steps shake the axis noticeably: amplification above 2 without damping. */
const NEAR = { low: 0.7, high: 1.4 } as const;

const EXCITATIONS = ['drive.full-step-excitation', 'drive.microstep-excitation'];

const within = (value: number | undefined): boolean => value !== undefined && value >= NEAR.low && value <= NEAR.high;
const near = ({ bounds }: Facts, id: string): boolean => within(bounds(id)?.nominal);
const surelyNear = ({ bounds }: Facts, id: string): boolean => within(bounds(id)?.low) && within(bounds(id)?.high);

export default check({
  id: 'drive-resonates-with-steps',
  title: 'Steps near the axial resonance',
  summary: 'At working speed full steps or microsteps come at about the axial resonance of the drive.',
  place: 'motion.speed',
  figure: 'drive.axial-resonance',
  basis: 'our threshold',
  sources: [{ title: 'Den Hartog, Mechanical Vibrations', where: 'chapter 2', weak: true }],
  because: ['motion.speed', 'screw.lead', 'controller.microsteps'],
  judge: (facts) => {
    if (EXCITATIONS.some((id) => surelyNear(facts, id))) return 'information';
    // Stiffness is mostly known within a factor of two or three, and the resonance with it.
    return EXCITATIONS.some((id) => near(facts, id)) ? { severity: 'hint', certain: false } : undefined;
  },
  message: (facts) => {
    const steps = near(facts, 'drive.full-step-excitation') ? 'full steps' : 'microsteps';
    return `Axis at ${facts.show('motion.speed')} ${facts.certain ? 'takes' : 'may take'} its ${steps} at about its axial resonance (${facts.show('drive.axial-resonance', 'range')}): it may hum and leave ripples. Work at another speed, or stiffen the drive.`;
  },
});
