import { fallbacks } from '../input.ts';

export default fallbacks({
  input: 'drive.sharing',
  title: 'How the drives share the load',
  symbol: '',
  compose: (read) => ({
    value: { type: 'choice', text: read.isWritten('drive.carries') && read.isWritten('drive.unit-spacing') ? 'gantry' : 'equal' },
    origin: { from: 'handbook', source: 'shared by position where a gantry says what rides on it and how far its drives stand apart, else equally', weak: false, place: undefined },
  }),
});
