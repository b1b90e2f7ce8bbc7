import { allChanges, changeOf, chosenProposal } from './entry-proposals.ts';
import { gentlerMove } from './frame-acceleration.ts';
import { largerProfile } from './larger-profile.ts';
import { choice, number, remedy, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';

/** Thin steel sheets, m: such a one is stiff in its plane, whatever its few screws leave. */
const SHEETS = [0.001, 0.002, 0.003];

/** Directions whose brace is at fault: those without one, softest first, or those that have one; both where it rings. */
function directions({ before, finding }: RemedyContext): readonly ('x' | 'y')[] {
  const low = (along: 'x' | 'y'): number => before.bounds(`frame-box.sway-frequency-${along}`)?.low ?? Infinity;
  const both = (['x', 'y'] as const).toSorted((a, b) => low(a) - low(b));
  // Where it rings, the softest direction is at fault whatever it has.
  if (finding.check === 'frame-box-rings') return both;
  return both.filter((along) => (before.choice(`frame-box.braced-${along}`) === 'none') === (finding.check === 'frame-unbraced'));
}

/** As few directions as it takes: the softest alone, then both. */
const sets = (all: readonly ('x' | 'y')[]): readonly (readonly ('x' | 'y')[])[] => all.map((_, index) => all.slice(0, index + 1));

function diagonals(context: RemedyContext): readonly Proposal[] {
  const candidates = sets(directions(context)).flatMap((along) => (['one-diagonal', 'two-diagonals'] as const).map((kind) => ({ along, kind })));
  const found = context.first(candidates, ({ along, kind }) => Object.fromEntries(along.map((one) => [`frame-box.braced-${one}`, choice(kind)])));
  const changes = found && allChanges(found.along.map((one) => changeOf(context, `frame-box.braced-${one}`, found.kind)));
  return found && changes ? [{ changes, what: `Brace the box along ${found.along.join(' and ')} with ${found.kind === 'one-diagonal' ? 'a diagonal' : 'a diagonal in each side'}` }] : [];
}

function panels(context: RemedyContext): readonly Proposal[] {
  const candidates = sets(directions(context)).flatMap((along) => SHEETS.map((thickness) => ({ along, thickness })));
  const inputs = ({ along, thickness }: (typeof candidates)[number]): Inputs => ({
    ...Object.fromEntries(along.map((one) => [`frame-box.braced-${one}`, choice('panel')])),
    'frame-box.panel-material': choice('steel'),
    'frame-box.panel-thickness': number(thickness),
  });
  const found = context.first(candidates, inputs);
  if (!found) return [];
  const sheet = `${found.thickness * 1000} mm`;
  const changes = allChanges([
    ...found.along.map((one) => changeOf(context, `frame-box.braced-${one}`, 'panel')),
    changeOf(context, 'frame-box.panel-material', 'steel'),
    changeOf(context, 'frame-box.panel-thickness', sheet),
  ]);
  return changes ? [{ changes, what: `Screw a steel sheet of ${sheet} to the side along ${found.along.join(' and ')}` }] : [];
}

export default [
  remedy({ id: 'brace-the-box', summary: 'Braces the box with diagonals in the soft direction.', cost: 2, cures: ['frame-unbraced', 'frame-sways-slowly', 'frame-box-rings'], propose: diagonals }),
  remedy({ id: 'panel-on-the-box', summary: 'Screws a steel sheet to a side of the box along the soft direction.', cost: 2.5, cures: ['frame-unbraced', 'frame-sways-slowly', 'frame-box-rings'], propose: panels }),
  remedy({
    id: 'larger-columns',
    summary: 'Takes larger profiles for the columns of the box.',
    cost: 4,
    cures: ['frame-unbraced', 'frame-sways-slowly', 'frame-box-rings'],
    propose: (context) => largerProfile(context, 'frame-box.column', (title) => `Take columns of ${title}`),
  }),
  remedy({ id: 'slower-acceleration-on-feet', summary: 'Slows the acceleration until the machine stands still on its feet.', cost: 1, cures: ['frame-tips', 'frame-walks'], propose: (context) => gentlerMove(context, 'frame-box.acceleration') }),
  remedy({
    id: 'larger-gantry',
    summary: 'Takes a larger profile for the gantry beam.',
    cost: 3,
    cures: ['gantry-sag-over-tolerance', 'gantry-rings'],
    propose: (context) => largerProfile(context, 'frame-gantry.section', (title) => `Take a gantry beam of ${title}`),
  }),
  remedy({
    id: 'clamp-the-gantry',
    summary: 'Clamps the ends of the gantry beam to something stiff.',
    cost: 2,
    cures: ['gantry-sag-over-tolerance', 'gantry-rings'],
    propose: (context) => chosenProposal(context, 'frame-gantry.ends', ['clamped'], () => 'Clamp the ends of the gantry to something stiff'),
  }),
];
