import { changeOf, resultText, solvedProposal } from './entry-proposals.ts';
import { writtenValue } from './nice-values.ts';
import { choice, remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** Bores the coupling to what it holds: the motor's shaft, and the turned end of the screw. */
function boreToFit(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const bores = before.subject.placeOf('coupling', 'bores');
  if (!bores) return [];
  const ends = [
    { index: '0', bore: before.bounds('coupling.motor-bore'), shaft: before.bounds('motor.shaft-diameter') },
    { index: '1', bore: before.bounds('coupling.screw-bore'), shaft: before.bounds('screw.journal-diameter') },
  ];
  const changes = ends.flatMap(({ index, bore, shaft }) => {
    if (!bore || !shaft || Math.abs(bore.nominal - shaft.nominal) < 1e-6) return [];
    const written = writtenValue(shaft.nominal, 'length', 'mm', 'up');
    return written === undefined ? [] : [{ place: { uri: bores.uri, path: [...bores.path, index] }, value: written }];
  });
  return changes.length === 0 ? [] : [{ changes, title: () => `Bore the coupling to ${changes.map((change) => change.value).join(' and ')}, as the shafts` }];
}

/** Forms that take more torque, the gentlest change first. */
const STRONGER = ['jaw', 'bellows', 'disc', 'rigid'];

export default [
  remedy({ id: 'bore-the-coupling-to-fit', summary: 'Bores the coupling to the shafts that it joins.', cures: ['coupling-bore-mismatch'], propose: boreToFit }),
  remedy({
    id: 'stronger-coupling',
    summary: 'Takes a coupling that carries the torque: a larger rating, or another form.',
    cures: ['coupling-overloaded', 'coupling-misaligned', 'drive-gives-too-much'],
    propose: (context) => {
      const rating = context.before.input('coupling.torque-rating');
      const stated = rating.state === 'known' && rating.origin.from !== 'handbook';
      if (stated) {
        const present = context.before.bounds('coupling.torque-rating')?.nominal ?? 0;
        return solvedProposal(context, { input: 'coupling.torque-rating', towards: 50 * present, say: (written) => `Take a coupling rated for ${written}`, coarse: true });
      }
      const present = context.before.choice('coupling.form');
      const found = context.first(STRONGER.filter((form) => form !== present), (form) => ({ 'coupling.form': choice(form) }));
      const change = found === undefined ? undefined : changeOf(context, 'coupling.form', found);
      return change && found !== undefined ? [{ changes: [change], title: (after) => `Take a ${found} coupling${resultText(context, after)}` }] : [];
    },
  }),
  remedy({
    id: 'align-the-shafts',
    summary: 'Aligns the two shafts until the coupling takes what is left.',
    cures: ['coupling-misaligned'],
    propose: (context) => [
      ...solvedProposal(context, { input: 'coupling.parallel-offset', towards: 0, say: (written) => `Align the shafts to an offset of ${written}` }),
      ...solvedProposal(context, { input: 'coupling.angular-offset', towards: 0, say: (written) => `Align the shafts to an angle of ${written}` }),
    ],
  }),
];
