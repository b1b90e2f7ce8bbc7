import { fallbacks } from '../input.ts';

const KINDS = ['screw', 'belt', 'rack'] as const;

export default fallbacks({
  input: 'drive.transmissions-written',
  title: 'What the drive is said to have',
  symbol: '',
  compose: (read) => {
    const found = KINDS.filter((kind) => read.isWritten(`drive.${kind}`));
    const origin = { from: 'handbook', source: 'the keys of the drive', weak: false, place: undefined } as const;
    return { value: { type: 'choice', text: found.length === 0 ? 'none' : found.join(' and ') }, origin };
  },
});
