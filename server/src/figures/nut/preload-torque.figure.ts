import { springDragTorque } from '../../mechanics/backlash.ts';
import { preloadDragTorque } from '../../mechanics/ball-screw.ts';
import { figure } from '../figure.ts';
import { contactNeeds, orJammed } from '../screw/contact.ts';

export default [
  figure({
    id: 'nut.preload-torque',
    title: 'Drag of the preload',
    symbol: 'T_pre',
    quantity: 'torque',
    meaning: 'Torque at the screw that the preload of the nut takes, whichever way it turns.',
    needs: { ...contactNeeds, lead: 'screw.lead', preload: 'nut.preload' },
    choices: { thread: 'screw.thread' },
    onlyWhere: { 'nut.design': ['spring-loaded', 'adjustable', 'preloaded-ball'] },
    compute: ({ preload, pitchDiameter, leadAngle, friction, lead, thread }) =>
      thread === 'ball' ? preloadDragTorque(preload, lead, leadAngle) : orJammed(springDragTorque(preload, pitchDiameter, leadAngle, friction)),
    formula: 'sliding: F_pre d₂/2 · [tan(φ′ + λ) + tan(φ′ − λ)]; ball: 0.05 F_pre l / (2π √tan λ)',
    sources: [
      { title: 'raising and lowering torque, one for each half of the nut; Budynas and Nisbett', where: 'section 8-2' },
      { title: 'ball nuts: form of JIS B 1192', weak: true },
    ],
    rank: 3,
  }),
  figure({
    id: 'nut.preload-torque-share',
    title: 'Share of the preload in the torque',
    symbol: 'T_pre/T_2',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the lifting torque goes into the drag of the preloaded nut.',
    needs: { drag: 'nut.preload-torque', torque: 'screw.lifting-torque' },
    compute: ({ drag, torque }) => (torque > 0 ? drag / torque : 0),
    formula: 'T_pre / T₂',
    sources: [{ title: 'follows from the two torques' }],
    rank: 3,
  }),
];
