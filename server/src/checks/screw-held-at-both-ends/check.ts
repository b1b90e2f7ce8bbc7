import { check } from '../check.ts';

export default check({
  id: 'screw-held-at-both-ends',
  title: 'Screw held axially at both ends',
  summary: 'Both ends take thrust, so the growth of a warming screw is blocked.',
  place: 'screw.thrust-end',
  figure: 'screw.buckling-temperature',
  basis: 'common practice',
  sources: [{ title: 'blocked growth against Euler’s load; the length of 300 mm is common practice, no published source' }],
  because: ['screw.thrust-end', 'screw.unsupported-length', 'conditions.machine-temperature'],
  judge: ({ choice, bounds }) => {
    if (choice('screw.thrust-end') !== 'both') return undefined;
    const least = bounds('screw.buckling-temperature');
    const rise = bounds('screw.temperature-rise');
    if (least && rise && rise.high > least.low) return 'error';
    return (bounds('screw.unsupported-length')?.high ?? 0) > 0.3 ? 'warning' : 'information';
  },
  message: ({ show, severity, bounds }) => {
    if (severity === 'error') {
      return `Screw is held axially at both ends and may warm up by ${show('screw.temperature-rise', 'high')}: ${show('screw.buckling-temperature', 'low')} over its frame buckle it. Let the far end float.`;
    }
    const thrust = bounds('screw.blocked-growth-force') ? `: each kelvin over its frame adds up to ${show('screw.blocked-growth-force', 'high')} of thrust` : ', so that its growth is blocked';
    const buckles = bounds('screw.buckling-temperature') ? `, and ${show('screw.buckling-temperature', 'low')} buckle it` : '';
    return `Screw is held axially at both ends${thrust}${buckles}. Let the far end float, or stretch the screw at assembly.`;
  },
});
