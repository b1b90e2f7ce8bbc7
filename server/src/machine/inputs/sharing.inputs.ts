import { fallbacks } from '../input.ts';

/** Nuts written as supports: one for each drive, or they say nothing of how the drives share. */
const isNut = (joint: string | undefined): boolean => joint?.startsWith('nut-') ?? false;

export default fallbacks({
  input: 'drive.sharing',
  title: 'How the drives share the load',
  symbol: '',
  compose: (read, lists) => {
    const nuts = lists.entries('axis.supports')?.filter((support) => isNut(support.choice('joint'))).length ?? 0;
    const vertical = Math.abs((read.number('axis.inclination')?.nominal ?? 0) - Math.PI / 2) < 1e-6;
    const placed = vertical && nuts > 1 && nuts === read.number('drive.units')?.nominal && read.origin('axis.support-joints') !== undefined && read.origin('axis.mass-places') !== undefined;
    const text = read.isWritten('drive.carries') && read.isWritten('drive.unit-spacing') ? 'gantry' : placed ? 'supports' : 'equal';
    return {
      value: { type: 'choice', text },
      origin: {
        from: 'handbook', weak: false, place: undefined,
        source: 'shared by position where a gantry says what rides on it and how far its drives stand apart, or where nuts and masses have places, else equally',
      },
    };
  },
});
