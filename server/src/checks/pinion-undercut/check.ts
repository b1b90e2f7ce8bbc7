import { check } from '../check.ts';

export default check({
  id: 'pinion-undercut',
  title: 'Pinion is undercut',
  summary: 'A pinion with so few teeth is cut away at its roots by the rack, unless its profile is shifted.',
  place: 'pinion.teeth',
  figure: 'pinion.teeth-over-least',
  bad: 'below',
  limits: [
    { at: 5 / 6, severity: 'warning', basis: 'standard', source: { title: 'five sixths as the practical limit, DIN 3960', where: 'from memory', weak: true } },
    { at: 1, severity: 'information', basis: 'book', source: { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 13-7' } },
  ],
  because: ['rack.pressure-angle', 'rack.helix-angle', 'rack.module'],
  message: ({ show, bounds, severity }) => {
    const least = Math.ceil((bounds('pinion.least-teeth')?.high ?? 0) - 1e-9);
    const harm = severity === 'information' ? 'a little of its roots is cut away' : 'its roots are thin, and fewer teeth carry at a time';
    return `Pinion of ${show('pinion.teeth')} teeth is undercut, since fewer than ${least} are cut into by a rack of ${show('rack.pressure-angle')}: ${harm}. Take ${least} teeth or more, a helix, or a pinion with a shifted profile.`;
  },
});
