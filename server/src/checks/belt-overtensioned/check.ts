import { check, timesOf } from '../check.ts';

export default check({
  id: 'belt-overtensioned',
  title: 'Belt is pulled too hard',
  summary: 'The largest tension is above what the belt should see in running, or above half of what breaks it.',
  place: 'belt.tension',
  figure: 'belt.tight-tension',
  bad: 'above',
  limits: [
    { at: 'belt.half-breaking', severity: 'error', basis: 'common practice', source: { title: 'data pages of steel-cord belts allow a quarter of the breaking force', weak: true } },
    { at: 'belt.tension-allowed', severity: 'warning', basis: 'common practice', source: { title: 'data pages of four steel-cord belts: 0.40 % strain, a quarter of the breaking force', where: 'carried over to other cords by us' } },
  ],
  because: ['belt.tension', 'belt.width', 'belt.cord', 'axis.moved-mass'],
  message: ({ show, worst, limit, certain, severity, bounds }) => {
    const gravely = severity === 'error' || (!certain && severity === 'warning' && worst > (bounds('belt.half-breaking')?.low ?? Infinity));
    const what = gravely ? 'half of its breaking force' : 'that it should see in running';
    const alone = (bounds('belt.tension-needed')?.nominal ?? 0) >= limit;
    return `Belt ${certain ? 'is' : 'may be'} pulled with ${show('belt.tight-tension', 'high')}, ${timesOf(worst / limit)} the ${show(gravely ? 'belt.half-breaking' : 'belt.tension-allowed', 'low')} ${gravely ? `that are ${what}` : what}: it ${gravely ? 'may tear' : 'stretches and wears early'}. ${alone ? 'Take' : 'Slacken it, or take'} a wider belt or a stronger cord.`;
  },
});
