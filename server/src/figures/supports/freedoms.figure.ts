import { countConstraints } from '../../mechanics/constraint-rank.ts';
import { motionInWords } from '../../mechanics/constraint-names.ts';
import type { DriveState } from '../../mechanics/constraint-wrenches.ts';
import { figure, unable, type Figure } from '../figure.ts';
import { layoutOf, NO_SUPPORTS, wrenchesIn } from './layout.ts';

export const exactConstraint = { title: 'rank of the wrenches of all joints (Blanding, Exact Constraint; Hale, Principles and Techniques for Designing Precision Machines)', weak: true } as const;

const freedoms = (id: string, title: string, symbol: string, state: DriveState, meaning: string, rank: 1 | 2 | 3): Figure =>
  figure({
    id, title, symbol, meaning, rank,
    quantity: 'count',
    onlyWith: ['supports'],
    needs: {},
    tables: { rows: 'axis.support-joints' },
    names: { owners: 'axis.support-joints' },
    compute: ({ rows, owners }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const { free } = countConstraints(wrenchesIn(layout, state), layout.scale);
      const note = free.map((twist) => motionInWords(twist, layout.scale, layout.joints)).join('; ');
      return note === '' ? 0 : { value: free.length, note };
    },
    formula: 'f = 6 − rank W',
    sources: [exactConstraint],
  });

export default [
  freedoms('supports.freedoms-guides-alone', 'Freedoms that the guides leave', 'f_g', 'guides alone', 'Motions that the carried part could make on its guides if the drives were taken off.', 3),
  freedoms('supports.freedoms-drives-running', 'Freedoms while the drives turn freely', 'f_r', 'drives running', 'Motions left to the carried part while the drives turn without holding: its travel, and what the drives must hold.', 3),
  freedoms('supports.freedoms-drives-held', 'Freedoms while the drives hold', 'f_h', 'drives held', 'Motions left to the carried part while the drives hold: there should be none.', 2),
];
