import { check, quantityText } from '../check.ts';

export default check({
  id: 'pulley-too-small',
  title: 'Pulley is too small for its belt',
  summary: 'The driving pulley has fewer teeth than the profile of the belt recommends or allows.',
  place: 'pulley.teeth',
  figure: 'pulley.teeth-over-least',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'common practice', source: { title: 'handbooks of the trade', where: 'from memory', weak: true } },
    { at: 'pulley.recommended-over-least', severity: 'warning', basis: 'common practice', source: { title: 'handbooks of the trade', where: 'from memory', weak: true } },
  ],
  because: ['pulley.teeth', 'belt.profile', 'belt.cord'],
  message: ({ show, choice, severity, bounds }) => {
    const below = severity === 'error' ? `the ${show('pulley.least-teeth')} that ${choice('belt.profile') ?? 'the belt'} needs at the least` : `the ${show('pulley.recommended-teeth')} recommended for ${choice('belt.profile') ?? 'the belt'}`;
    const drives = bounds('drive.reduction-ratio')?.nominal === 1 ? ', with a reduction if the motor needs it' : '';
    return `Pulley has ${show('pulley.teeth')} teeth, below ${below}: ${quantityText(bounds('pulley.pitch-diameter')?.nominal ?? 0, 'length', 'mm')} bend the cord sharply, and it tires early. Take one with more teeth${drives}.`;
  },
});
