import { check } from '../check.ts';

export default check({
  id: 'idler-too-small',
  title: 'Idler is too small for its belt',
  summary: 'The idlers bend the belt more sharply than its profile should be bent.',
  place: 'idlers.diameter',
  figure: 'idlers.diameter-over-least',
  bad: 'below',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'handbooks of the trade', where: 'from memory', weak: true } }],
  // An idler of which nothing is written is taken to be as large as the pulley, which has a finding of its own.
  when: ({ isDefault }) => !isDefault('idlers.diameter'),
  because: ['idlers.side', 'belt.profile', 'pulley.teeth'],
  message: ({ show, choice, certain, worst, bounds }) => {
    const least = (bounds('idlers.diameter')?.low ?? 0) / worst;
    const back = choice('idlers.side') === 'back';
    return `Idlers of ${show('idlers.diameter', 'low')} ${certain ? 'are' : 'may be'} too small for ${choice('belt.profile') ?? 'this belt'}${back ? ', which they bend backwards' : ''}: ${(least * 1000).toPrecision(3)} mm ${back ? 'are advised' : 'is the least'}. The cord tires early. Take larger ones${back ? ', or lead the belt with its teeth over them' : ''}.`;
  },
});
