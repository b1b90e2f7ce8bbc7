import { STANDARD_THREADS } from '../catalogue/trapezoidal-threads.ts';
import { sizeMeaning } from '../machine/trapezoidal-size.ts';
import { factsOf } from '../checks/judge.ts';
import { changeOf } from './entry-proposals.ts';
import { remedy } from './remedy.ts';

const millimetres = (metres: number): string => String(Number((metres * 1000).toFixed(3)));

export default [
  remedy({
    id: 'write-the-whole-size',
    summary: 'Writes the size out so that it can be read in one way only.',
    cost: 1,
    cures: ['screw-size-ambiguous'],
    propose: (context) => {
      const meaning = sizeMeaning(factsOf(context.before));
      if (meaning?.kind !== 'ambiguous') return [];
      const d = millimetres(meaning.majorDiameter);
      const { lead } = meaning;
      return meaning.readings.flatMap(({ pitch, starts }) => {
        const p = millimetres(pitch);
        const size = starts === 1 ? `Tr${d}x${p}` : `Tr${d}x${millimetres(lead ?? starts * pitch)}(P${p})`;
        const change = changeOf(context, 'screw.size', size);
        return change ? [{ changes: [change], what: `It is ${size}`, result: () => `${starts === 1 ? 'one start' : `${starts} starts`}, lead ${millimetres(starts * pitch)} mm` }] : [];
      });
    },
  }),
  remedy({
    id: 'take-a-usual-thread',
    summary: 'Takes the usual thread of the same diameter whose pitch is nearest, where the digits were slipped.',
    cost: 1,
    cures: ['thread-size-uncommon'],
    propose: (context) => {
      const diameter = context.before.bounds('screw.major-diameter')?.nominal;
      const pitch = context.before.bounds('screw.pitch')?.nominal;
      if (diameter === undefined || pitch === undefined) return [];
      const usual = STANDARD_THREADS.filter((thread) => thread.starts === 1 && Math.abs(thread.majorDiameter - diameter) < 1e-6).sort((a, b) => Math.abs(a.pitch - pitch) - Math.abs(b.pitch - pitch));
      return usual.slice(0, 2).flatMap((thread) => {
        const change = changeOf(context, 'screw.size', thread.designation);
        return change ? [{ changes: [change], what: `It is ${thread.designation}`, result: () => `pitch ${millimetres(thread.pitch)} mm instead of ${millimetres(pitch)} mm` }] : [];
      });
    },
  }),
  remedy({
    id: 'take-the-size',
    summary: 'Takes the contradicting dimension away, so that the size rules.',
    cost: 1,
    cures: ['screw-size-contradicted'],
    propose: (context) => {
      const size = context.before.choice('screw.size');
      const { place } = context.finding;
      return size === undefined ? [] : [{ changes: [{ place, value: null }], what: `Take the size ${size}, remove the entry that contradicts it` }];
    },
  }),
  remedy({
    id: 'take-the-dimensions',
    summary: 'Takes the size away, so that the written dimensions rule.',
    cost: 1,
    cures: ['screw-size-contradicted'],
    propose: (context) => {
      const place = context.place('screw.size');
      const size = context.before.choice('screw.size');
      return place && size !== undefined ? [{ changes: [{ place, value: null }], what: `Take the written dimensions, remove the size ${size}` }] : [];
    },
  }),
  remedy({
    id: 'nut-of-the-same-thread',
    summary: 'Gives the nut the thread of the screw.',
    cost: 2,
    cures: ['nut-does-not-fit'],
    propose: (context) => {
      const size = context.before.choice('screw.size');
      const change = size === undefined ? undefined : changeOf(context, 'nut.size', size);
      return change && size !== undefined ? [{ changes: [change], what: `Take a nut ${size}, as the screw` }] : [];
    },
  }),
];
