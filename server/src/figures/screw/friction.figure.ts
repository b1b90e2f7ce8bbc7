import { effectiveFriction, runDownFriction, selfLockingFactor } from '../../mechanics/power-screw.ts';
import { flankAngleOf } from '../../mechanics/sliding-thread.ts';
import { figure } from '../figure.ts';

const selfLocking = { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' } as const;
const sliding = { 'screw.thread': ['trapezoidal', 'acme', 'square'] } as const;

export default [
  figure({
    id: 'screw.effective-friction',
    title: 'Effective friction of the flank',
    symbol: 'µ′',
    quantity: 'ratio',
    meaning: 'Friction of the sloping flank as if the thread were square: the slope wedges, so it is a little more than the plain coefficient.',
    needs: { friction: 'nut.friction', leadAngle: 'screw.lead-angle' },
    choices: { thread: 'screw.thread' },
    compute: ({ friction, leadAngle, thread }) => effectiveFriction(friction, flankAngleOf(thread), leadAngle),
    formula: 'µ′ = µ / cos α_n, tan α_n = tan α cos λ',
    sources: [{ title: 'Mott, Machine Elements in Mechanical Design', where: 'section 17-2' }],
    rank: 3,
  }),
  figure({
    id: 'screw.run-down-friction',
    title: 'Runs down below friction',
    symbol: 'µ_0',
    quantity: 'ratio',
    meaning: 'Friction of the flanks below which the load turns the screw by itself, thrust bearing left out.',
    needs: { leadAngle: 'screw.lead-angle' },
    choices: { thread: 'screw.thread' },
    onlyWhere: sliding,
    compute: ({ leadAngle, thread }) => runDownFriction(flankAngleOf(thread), leadAngle),
    formula: 'µ₀ = tan λ cos α_n',
    sources: [selfLocking],
    rank: 2,
  }),
  figure({
    id: 'screw.self-locking-factor',
    title: 'Self-locking factor, moving friction',
    symbol: 's',
    quantity: 'ratio',
    meaning: 'How many times over the thread alone holds its load once it slides. Below 1 it runs down; from 1.5 it counts as holding, unless vibration takes the friction away.',
    needs: { friction: 'screw.effective-friction', leadAngle: 'screw.lead-angle' },
    onlyWhere: sliding,
    compute: ({ friction, leadAngle }) => selfLockingFactor(friction, leadAngle),
    formula: 's = µ′ / tan λ',
    sources: [selfLocking],
    rank: 2,
  }),
  figure({
    id: 'screw.self-locking-factor-at-rest',
    title: 'Self-locking factor, friction at rest',
    symbol: 's_s',
    quantity: 'ratio',
    meaning: 'The same while nothing moves. Where only this one is above 1, the load stays until a knock starts it, and then runs down.',
    needs: { factor: 'screw.self-locking-factor', ratio: 'nut.static-friction-ratio' },
    onlyWhere: sliding,
    compute: ({ factor, ratio }) => factor * ratio,
    formula: 's_s = s · µ_s/µ',
    sources: [selfLocking],
    rank: 2,
  }),
];
