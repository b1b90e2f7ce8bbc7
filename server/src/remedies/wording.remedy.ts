import { sizeMeaning } from '../machine/trapezoidal-size.ts';
import { factsOf } from '../checks/judge.ts';
import { changeOf } from './entry-proposals.ts';
import { remedy } from './remedy.ts';

const millimetres = (metres: number): string => String(Number((metres * 1000).toFixed(3)));

export default [
  remedy({
    id: 'write-the-whole-size',
    summary: 'Writes the size out so that it can be read in one way only.',
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
        return change ? [{ changes: [change], title: () => `It is ${size}: ${starts === 1 ? 'one start' : `${starts} starts`}, lead ${millimetres(starts * pitch)} mm` }] : [];
      });
    },
  }),
  remedy({
    id: 'take-the-size',
    summary: 'Takes the contradicting dimension away, so that the size rules.',
    cures: ['screw-size-contradicted'],
    propose: (context) => {
      const size = context.before.choice('screw.size');
      const { place } = context.finding;
      return size === undefined ? [] : [{ changes: [{ place, value: null }], title: () => `Take the size ${size}, remove what contradicts it` }];
    },
  }),
  remedy({
    id: 'take-the-dimensions',
    summary: 'Takes the size away, so that the written dimensions rule.',
    cures: ['screw-size-contradicted'],
    propose: (context) => {
      const place = context.place('screw.size');
      const size = context.before.choice('screw.size');
      return place && size !== undefined ? [{ changes: [{ place, value: null }], title: () => `Take the dimensions, remove the size ${size}` }] : [];
    },
  }),
  remedy({
    id: 'nut-of-the-same-thread',
    summary: 'Gives the nut the thread of the screw.',
    cures: ['nut-does-not-fit'],
    propose: (context) => {
      const size = context.before.choice('screw.size');
      const change = size === undefined ? undefined : changeOf(context, 'nut.size', size);
      return change && size !== undefined ? [{ changes: [change], title: () => `Take a nut ${size}, as the screw` }] : [];
    },
  }),
  remedy({
    id: 'turn-the-end-down',
    summary: 'Turns the end of the screw down to the bore of the coupling.',
    cures: ['threaded-end-in-plain-bore'],
    propose: (context) => {
      const bore = context.before.bounds('coupling.screw-bore')?.nominal;
      const major = context.before.bounds('screw.major-diameter')?.nominal;
      if (bore === undefined || major === undefined) return [];
      // The thread runs out below its root: turn to 0.8 of the outside, in whole half millimetres, and bore the coupling to match.
      const journal = Math.floor(major * 0.75 * 2000) / 2000;
      const size = `${millimetres(journal)} mm`;
      const change = changeOf(context, 'screw.journal-diameter', size);
      const place = context.before.subject.placeOf('coupling', 'bores');
      const motor = context.before.bounds('coupling.motor-bore')?.nominal;
      if (!change || !place || motor === undefined) return [];
      return [{ changes: [change, { place: { uri: place.uri, path: [...place.path, '1'] }, value: size }], title: () => `Turn the end of the screw down to ${size}, coupling bored to match` }];
    },
  }),
];
