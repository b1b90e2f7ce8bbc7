import { COUNTED_FRICTION, FRICTION_FACTOR, judgeFreeRunningHolding, type FreeRunningHolder, type FreeRunningHolding } from '../../mechanics/free-running-drive.ts';
import { HOLDING_FACTOR } from '../../mechanics/unpowered-holding.ts';
import { figure, unable } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';
import { HOLDING_RANK, holdingHint, holdingInWords } from './holding-words.ts';

/** Drives without a thread: the load turns them back, and nothing in them locks. */
const onlyWhere = { 'drive.transmission': ['belt', 'rack'] } as const;

const sources = [
  { title: 'statics' },
  { title: `common practice, no published source: a brake counts from ${HOLDING_FACTOR} times the load, half of the guide friction from ${FRICTION_FACTOR} times` },
] as const;

const HOLDERS: Readonly<Record<FreeRunningHolder, string>> = {
  brake: 'the brake holds',
  balance: 'nothing pulls on the drive at rest',
  reduction: 'only the reduction, which cannot be driven backwards, holds',
  detent: 'only the detent of the unpowered motor holds',
  guides: 'only the friction of the guides holds',
  several: 'brake, detent and guide friction hold only together',
  nothing: 'what resists is less than what drives',
};

const remark = ({ holder, vibrationCaveat }: FreeRunningHolding): string => (vibrationCaveat ? `${HOLDERS[holder]}; vibration can take it away` : HOLDERS[holder]);

const needs = { load: 'drive.gravity-load', travel: 'drive.travel-per-shaft-turn', friction: 'guides.friction-force', share: 'drive.load-share' } as const;
const optional = { detent: 'motor.detent-at-screw', brake: 'drive.brake-force', backwards: 'drive.reduction-reverse-efficiency' } as const;

type Values = { readonly [alias in keyof typeof needs]: number } & { readonly [alias in keyof typeof optional]: number | undefined };

const holdingOf = ({ load, travel, friction, share, detent, brake, backwards }: Values): FreeRunningHolding =>
  judgeFreeRunningHolding({
    load,
    guideFriction: Math.max(0, friction) * share,
    detentForce: ((detent ?? 0) * 2 * Math.PI) / travel,
    brakeForce: brake ?? 0,
    reductionLocks: backwards !== undefined && backwards <= 0,
  });

const brakeForce = { id: 'drive.brake-force', title: 'Brake force along the axis', symbol: 'F_bx', quantity: 'force', unit: 'N', meaning: 'Force that the brake of one drive holds along the axis.', onlyWith: ['brake'], rank: 3 } as const;

export default [
  figure({
    ...brakeForce,
    onlyWhere: { 'brake.at': ['motor', 'screw', 'shaft'] },
    needs: { torque: 'brake.holding-torque', travel: 'drive.travel-per-shaft-turn' },
    optional: { ratio: 'drive.reduction-ratio', units: 'drive.units' },
    choices: { at: 'brake.at' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ torque, travel, ratio, units, at, motors }) =>
      // One motor for all units has one brake, and each shaft gets its share.
      ((at === 'motor' ? (torque * (ratio ?? 1)) / shaftsPerMotor(motors, units ?? 1) : torque) * 2 * Math.PI) / travel,
    formula: 'F_bx = T_b · 2π/p_w at the shaft, T_b i · 2π/p_w at the motor',
    sources: [{ title: 'power balance; friction of belt, teeth and reduction is left out, the cautious side' }],
  }),
  figure({
    ...brakeForce,
    onlyWhere: { 'brake.at': ['rail'] },
    needs: { force: 'brake.holding-force' },
    compute: ({ force }) => force,
    formula: 'F_bx = F_b',
    sources: [{ title: 'the entry of the brake' }],
  }),
  figure({
    id: 'drive.brake-factor',
    onlyWhere,
    title: 'Brake over the load without friction',
    symbol: 's_b',
    quantity: 'ratio',
    meaning: 'Force of the brake along the axis over the resting load, no friction counted.',
    needs: { brake: 'drive.brake-force', load: 'drive.gravity-load' },
    onlyWith: ['brake'],
    compute: ({ brake, load }) => (load === 0 ? unable(HOLDERS.balance) : brake / Math.abs(load)),
    formula: 's_b = F_bx / |F₀|',
    sources: [{ title: 'statics; 1.5 to 2 is common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'drive.guide-friction-counted',
    onlyWhere,
    title: 'Guide friction that is counted',
    symbol: 'F_gh',
    quantity: 'force',
    unit: 'N',
    meaning: 'Half of the guide friction on one drive: as much as is relied on to hold the load. Freshly oiled and shaken there is less.',
    needs: { friction: 'guides.friction-force', share: 'drive.load-share' },
    compute: ({ friction, share }) => COUNTED_FRICTION * Math.max(0, friction) * share,
    formula: 'F_gh = q_F F_g / 2',
    sources: [{ title: 'common practice, no published source' }],
    rank: 3,
  }),
  figure({
    id: 'drive.holding-verdict',
    onlyWhere,
    title: 'With power off',
    symbol: 'H',
    quantity: 'ratio',
    meaning: 'What the axis does when the motor has no current: it holds, may creep, or drops. This drive runs back under any load; the worst end of what resists decides.',
    needs,
    optional: { ...optional, balance: 'counterbalance.carried-force' },
    compute: (values) => {
      const holding = holdingOf(values);
      // A counterbalance that carries just the weight may do so at one end of what is uncertain only: the others have their verdict.
      return holding.holder === 'balance' && values.balance === undefined ? unable(HOLDERS.balance) : { value: HOLDING_RANK[holding.verdict], note: remark(holding) };
    },
    formula: 'holds: F_bx ≥ 1.5 |F₀| or F_gh ≥ 2 |F₀|; may creep: η_i,r ≤ 0, or F_bx + T_d,s 2π/p_w + F_gh ≥ |F₀|; else drops',
    sources,
    rank: 1,
    inWords: holdingInWords,
    hint: holdingHint,
  }),
  figure({
    id: 'drive.holding-factor',
    onlyWhere,
    title: 'Holding factor with power off',
    symbol: 's_h',
    quantity: 'ratio',
    meaning: 'What holds over the load, with power off: of a brake or of guide friction that does it alone, else of brake, detent and half the guide friction together.',
    needs,
    optional,
    compute: (values) => {
      const holding = holdingOf(values);
      return Number.isFinite(holding.factor) ? { value: holding.factor, note: remark(holding) } : unable(HOLDERS[holding.holder]);
    },
    formula: 's_h = (F_bx + T_d,s 2π/p_w + F_gh) / |F₀|',
    sources,
    rank: 2,
  }),
];
