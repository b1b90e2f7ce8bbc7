import { fallbacks } from '../input.ts';

export default fallbacks({
  input: 'drive.transmission',
  title: 'Kind of drive',
  symbol: '',
  // A drive of which nothing is said yet is taken for one with a screw, so that a person is told what a screw needs.
  compose: (read) => {
    const text = read.isWritten('drive.screw') ? 'screw' : read.isWritten('drive.belt') ? 'belt' : read.isWritten('drive.rack') ? 'rack' : 'screw';
    const origin = { from: 'handbook', source: 'what the drive has: a screw, a belt or a rack', weak: false, place: undefined } as const;
    return { value: { type: 'choice', text }, origin };
  },
});
