import { nextThickerShaft } from '../catalogue/guide-shafts.ts';
import { guideKind } from '../catalogue/guide-kinds.ts';
import { nextLargerRail, type ProfileRail } from '../catalogue/profile-rails.ts';
import { railOfSize, railSizeText } from '../machine/guide-rail-size.ts';
import { allChanges, changeOf, chosenProposal, costOfChange, exactText, solvedProposal, valueOf, inOwnUnit } from './entry-proposals.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** No thicker than so many times the present shaft: beyond, it is another machine. */
const LARGEST = 2.6;
/** No longer than so many times the present guided length or spacing. */
const LONGEST = 4;

/** Whether the person wrote the entry, and no handbook stands in. */
function isWritten({ before }: RemedyContext, input: string): boolean {
  const found = before.input(input);
  return found.state === 'known' && found.origin.from === 'here';
}

function thickerShaft(context: RemedyContext): readonly Proposal[] {
  const present = context.before.bounds('guides.shaft-diameter')?.nominal;
  if (present === undefined || !(present > 0) || (context.before.bounds('guides.shaft-bore')?.high ?? 0) > 0) return [];
  const sizes: number[] = [];
  for (let next = nextThickerShaft(present); next && next.diameter <= LARGEST * present; next = nextThickerShaft(next.diameter)) sizes.push(next.diameter);
  const found = context.first(sizes, (diameter) => ({ 'guides.shaft-diameter': number(diameter) }));
  const text = found === undefined ? undefined : exactText(context, 'guides.shaft-diameter', found);
  const change = text === undefined ? undefined : changeOf(context, 'guides.shaft-diameter', text);
  return change && found !== undefined && text !== undefined ? [{ changes: [change], what: `Take thicker guide shafts of ${text}`, cost: 3 + costOfChange(present, found) }] : [];
}

function shorterShaft(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const [free, travel] = ['guides.unsupported-length', 'axis.travel'].map((input) => before.bounds(input)?.high);
  if (free === undefined || travel === undefined) return [];
  const shortest = travel + (before.bounds('guides.guided-length')?.high ?? before.bounds('guides.carriage-spacing')?.high ?? 0);
  return shortest < free ? solvedProposal(context, { input: 'guides.unsupported-length', towards: shortest, say: (written) => `Set the holders nearer, ${written} between them` }) : [];
}

/** Carriages farther apart, and with them the guided length where both are written. */
function longerGuide(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const spaced = (before.bounds('guides.carriages')?.nominal ?? 1) > 1 && isWritten(context, 'guides.carriage-spacing');
  const spacing = before.bounds('guides.carriage-spacing')?.nominal;
  const length = before.bounds('guides.guided-length')?.nominal;
  if (!isWritten(context, 'guides.guided-length')) {
    return spaced && spacing !== undefined
      ? solvedProposal(context, { input: 'guides.carriage-spacing', towards: LONGEST * spacing, say: (written) => `Set the carriages ${written} apart`, coarse: true })
      : [];
  }
  if (length === undefined) return [];
  const found = context.solve('guides.guided-length', LONGEST * length);
  const text = found === undefined ? undefined : inOwnUnit(context, 'guides.guided-length', found, 'up', true);
  const written = text === undefined ? undefined : valueOf('guides.guided-length', text);
  if (text === undefined || written === undefined) return [];
  const apart = spaced && spacing !== undefined ? exactText(context, 'guides.carriage-spacing', spacing + written - length) : undefined;
  const shafts = shaftsFor(context, written);
  const changes = allChanges([
    changeOf(context, 'guides.guided-length', text),
    ...(apart === undefined ? [] : [changeOf(context, 'guides.carriage-spacing', apart)]),
    ...(shafts === undefined ? [] : [changeOf(context, 'guides.unsupported-length', shafts)]),
  ]);
  const what = [`Lengthen the guide to ${text}`, ...(apart === undefined ? [] : [`carriages ${apart} apart`]), ...(shafts === undefined ? [] : [`the shafts to ${shafts}`])].join(', ');
  return changes ? [{ changes, what, cost: (shafts === undefined ? 3 : 3.5) + costOfChange(length, written) }] : [];
}

/** Free length of the shafts, where a longer slider needs more of it for its travel. */
function shaftsFor(context: RemedyContext, guidedLength: number): string | undefined {
  const [travel, free] = ['axis.travel', 'guides.unsupported-length'].map((input) => context.before.bounds(input));
  if (context.before.choice('guides.kind') !== 'round-shaft' || !travel || !free || travel.high + guidedLength <= free.low) return undefined;
  return inOwnUnit(context, 'guides.unsupported-length', travel.high + guidedLength, 'up');
}

/** Bearings with less friction, the cheaper first. Balls do not run on a plain slide. */
function smoother(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const candidates = before.choice('guides.kind') === 'plain' ? ['lined-bushing'] : ['lined-bushing', 'ball-bushing'];
  const present = guideKind(before.choice('guides.bearing') ?? '');
  const kinds = candidates.flatMap((name) => guideKind(name) ?? []).filter((kind) => present === undefined || kind.friction.nominal < present.friction.nominal);
  const found = context.first(kinds, ({ kind, friction }) => ({ 'guides.bearing': choice(kind), 'guides.friction': number(friction.high) }));
  const bearing = found && changeOf(context, 'guides.bearing', found.kind);
  if (!found || !bearing) return [];
  const place = isWritten(context, 'guides.friction') ? context.place('guides.friction') : undefined;
  return [{ changes: [bearing, ...(place ? [{ place, value: null }] : [])], what: found.kind === 'ball-bushing' ? 'Take ball bushings' : 'Take bushings lined with PTFE' }];
}

function largerRail(context: RemedyContext): readonly Proposal[] {
  const present = context.before.choice('guides.kind') === 'profile-rail' ? railOfSize(context.before.choice('guides.size') ?? '') : undefined;
  if (!present) return [];
  const rails: ProfileRail[] = [];
  for (let next = nextLargerRail(present.form, present.size); next; next = nextLargerRail(next.form, next.size)) rails.push(next);
  const found = context.first(rails, (rail) => ({ 'guides.size': choice(railSizeText(rail)) }));
  const change = found && changeOf(context, 'guides.size', railSizeText(found));
  return change ? [{ changes: [change], what: `Take rails of size ${railSizeText(found)}` }] : [];
}

/** Carriages with a larger rating, where the person wrote it. */
function strongerCarriage(context: RemedyContext): readonly Proposal[] {
  const input = context.finding.check === 'guide-life-short' ? 'guides.dynamic-rating' : 'guides.static-rating';
  const present = context.before.bounds(input)?.nominal;
  if (present === undefined || !isWritten(context, input)) return [];
  return solvedProposal(context, { input, towards: 10 * present, say: (written) => `Take carriages rated ${written} ${input === 'guides.dynamic-rating' ? 'dynamic' : 'static'}`, coarse: true });
}

/** The smallest rail that is usually bolted down along its length in the open. */
const FIRST_RAIL = '15';
/** What says nothing of a rail. */
const OF_SHAFTS = ['guides.bearing', 'guides.shaft-diameter', 'guides.shaft-bore', 'guides.shaft-material', 'guides.unsupported-length', 'guides.shaft-ends', 'guides.friction', 'guides.carriage-length', 'guides.dynamic-rating', 'guides.static-rating', 'guides.moment-limit', 'guides.rated-travel'];

/** Rails instead of shafts; what was written of the shafts goes. */
function rails(context: RemedyContext): readonly Proposal[] {
  if (context.before.choice('guides.kind') !== 'round-shaft') return [];
  const gone = OF_SHAFTS.filter((input) => isWritten(context, input)).map((input) => context.place(input));
  const written = allChanges([changeOf(context, 'guides.kind', 'profile-rail'), changeOf(context, 'guides.size', FIRST_RAIL)]);
  const removed = gone.flatMap((place) => (place ? [{ place, value: null }] : []));
  return written ? [{ changes: [...written, ...removed], what: `Take profile rails of size ${FIRST_RAIL}, bolted down along their length`, result: () => 'no free length left to bend' }] : [];
}

export default [
  remedy({ id: 'thicker-guide-shafts', summary: 'Takes the next thicker guide shafts that are sold.', cost: 3, cures: ['guide-sags', 'bushing-tilts', 'guide-shaft-overstressed', 'bushing-overpressed', 'bushing-overheats', 'bushing-wears-out', 'guide-life-short', 'guide-static-safety-low'], propose: thickerShaft }),
  remedy({ id: 'shorter-guide-shafts', summary: 'Sets the holders of the guide shafts as near together as travel and carriage allow.', cost: 2, cures: ['guide-sags', 'bushing-tilts', 'guide-shaft-overstressed'], propose: shorterShaft }),
  remedy({
    id: 'clamp-the-guide-shafts',
    summary: 'Clamps the ends of the guide shafts in long stiff holders.',
    cost: 2,
    cures: ['guide-sags', 'bushing-tilts', 'guide-shaft-overstressed'],
    propose: (context) => chosenProposal(context, 'guides.shaft-ends', ['clamped'], () => 'Clamp the shaft ends in long stiff holders'),
  }),
  remedy({
    id: 'support-the-guide-shafts',
    summary: 'Takes guide shafts that are supported along their length.',
    cost: 4,
    cures: ['guide-sags', 'bushing-tilts', 'guide-shaft-overstressed'],
    propose: (context) =>
      context.before.choice('guides.kind') === 'round-shaft'
        ? chosenProposal(context, 'guides.kind', ['supported-shaft'], () => 'Support the shafts along their length').map((proposal) => ({ ...proposal, result: () => 'no free length left to bend' }))
        : [],
  }),
  remedy({ id: 'rails-for-shafts', summary: 'Takes profile rails that are bolted down along their length, in place of round shafts.', cost: 4.5, cures: ['guide-sags', 'bushing-tilts', 'guide-shaft-overstressed'], propose: rails }),
  remedy({ id: 'longer-guide', summary: 'Lengthens the guided length, or sets the carriages farther apart.', cost: 3, cures: ['slider-jams', 'slider-near-jam', 'guide-life-short', 'guide-static-safety-low'], propose: longerGuide }),
  remedy({
    id: 'drive-nearer-to-the-guides',
    summary: 'Moves the drive nearer to the middle of the guides.',
    cost: 3,
    cures: ['slider-jams', 'slider-near-jam', 'guide-life-short', 'guide-static-safety-low'],
    propose: (context) => {
      const present = context.before.bounds('guides.drive-offset')?.nominal;
      return present === undefined || !(present > 0) ? [] : solvedProposal(context, { input: 'guides.drive-offset', towards: 0.05 * present, say: (written) => `Move the drive to ${written} from the guides` });
    },
  }),
  remedy({ id: 'smoother-guide-bearings', summary: 'Takes bearings with less friction: bushings lined with PTFE, or ball bushings.', cost: 2.5, cures: ['slider-jams', 'slider-near-jam'], propose: smoother }),
  remedy({ id: 'larger-rails', summary: 'Takes profile rails of the next larger size.', cost: 3, cures: ['guide-life-short', 'guide-static-safety-low'], propose: largerRail }),
  remedy({ id: 'stronger-carriages', summary: 'Takes carriages or bushings with a larger rating.', cost: 3, cures: ['guide-life-short', 'guide-static-safety-low'], propose: strongerCarriage }),
];
