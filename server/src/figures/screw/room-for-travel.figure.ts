import { figure } from '../figure.ts';
import { endsOf } from '../screw-ends.ts';

export default figure({
  id: 'screw.length-needed',
  title: 'Free length that the travel needs',
  symbol: 'L_h',
  quantity: 'length',
  unit: 'mm',
  meaning: 'Travel and nut side by side: so much of the screw must be free between its bearings. Past a free end the nut may stand out.',
  needs: { travel: 'axis.travel' },
  optional: { nut: 'nut.length' },
  choices: { ends: 'screw.end-supports' },
  onlyWith: ['screw'],
  compute: ({ travel, nut, ends }) => (endsOf(ends)[1] === 'free' ? travel : travel + (nut ?? 0)),
  formula: 'L_h = h + L_n; h with a free end',
  sources: [{ title: 'geometry' }],
  rank: 3,
});
