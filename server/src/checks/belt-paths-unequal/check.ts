import { check, type Facts } from '../check.ts';

/** Our reading of what people who build such machines keep to. */
const MOST_DIFFERENT = 0.1;
/** Rounding is no breach. */
const EXCEEDED = MOST_DIFFERENT * (1 + 1e-9);

const LENGTHS = 'layout.path-difference';
const TENSIONS = 'layout.tension-difference';
const TWIST = 'layout.twist-use';

/** Three digits: 10.3 % is told beside a limit of 10 %. */
const percent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

/** The tensions are told before the lengths, since they are set in a minute. */
function worstOf({ bounds }: Facts): 'tensions' | 'lengths' | undefined {
  if ((bounds(TENSIONS)?.high ?? 0) > EXCEEDED || (bounds(TWIST)?.high ?? 0) > 1) return 'tensions';
  return (bounds(LENGTHS)?.high ?? 0) > EXCEEDED ? 'lengths' : undefined;
}

const isCertain = ({ bounds }: Facts): boolean =>
  (bounds(TENSIONS)?.nominal ?? 0) > EXCEEDED || (bounds(TWIST)?.nominal ?? 0) > 1 || (bounds(LENGTHS)?.nominal ?? 0) > EXCEEDED;

export default check({
  id: 'belt-paths-unequal',
  title: 'Crossed belts are unequal',
  summary: 'The two crossed belts differ by more than a tenth in path or tension, or their tensions turn the gantry by more than the accuracy wanted.',
  place: (facts) => (worstOf(facts) === 'lengths' ? 'layout.first-path-length' : 'layout.first-path-tension'),
  figure: 'layout.twist-offset',
  basis: 'common practice',
  sources: [{ title: 'a tenth is common practice, no published source; skew and coupling follow from the mechanics' }],
  because: ['layout.second-path-tension', 'layout.second-path-length', 'belt.specific-stiffness', 'partner.accuracy'],
  judge: (facts) => {
    if (worstOf(facts) === undefined) return undefined;
    const certain = isCertain(facts);
    return { severity: certain ? 'warning' : 'information', certain };
  },
  message: (facts) => {
    const { bounds, show, certain } = facts;
    const verb = certain ? 'differ' : 'may differ';
    if (worstOf(facts) === 'lengths') {
      return `Paths of the crossed belts ${verb} by ${percent(bounds(LENGTHS)?.high ?? 0)}, ${show('layout.first-path-length')} and ${show('layout.second-path-length')}: pulling along one axis pushes the other by ${Number(((bounds('layout.cross-coupling')?.high ?? 0) * 100).toPrecision(2))} % of the give. Lead them alike.`;
    }
    const offset = bounds('layout.twist-offset') ? ` by up to ${show('layout.twist-offset', 'high')}` : '';
    return `Tensions of the crossed belts ${verb} by ${percent(bounds(TENSIONS)?.high ?? 0)}, ${show('layout.first-path-tension')} and ${show('layout.second-path-tension')}: the tighter one turns the gantry out of square${offset}. Set both alike by their strum.`;
  },
});
