import { HOLDING_FACTOR, torqueThroughReduction, type Holder, type Holding } from '../../mechanics/unpowered-holding.ts';
import { figure, unable } from '../figure.ts';
import { bearingNeeds } from '../screw/contact.ts';
import { HOLDING_RANK, holdingHint, holdingInWords } from './holding-words.ts';
import { holdingChoices, holdingNeeds, holdingOf, holdingOptions, plainCollarTorque } from './holding-situation.ts';

const sources = [
  { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' },
  { title: `common practice, no published source: ${HOLDING_FACTOR} counts as holding` },
] as const;

const HOLDERS: Readonly<Record<Holder, string>> = {
  thread: 'the friction of the thread holds',
  brake: 'the brake holds',
  balance: 'nothing pulls on the drive at rest',
  reduction: 'only the reduction, which cannot be driven backwards, holds',
  collar: 'only the plain thrust face holds',
  detent: 'only the detent of the unpowered motor holds',
  several: 'thrust face, detent and brake hold only together',
  nothing: 'what resists is less than what drives',
};

/** What holds, and what can end it. */
function remark({ holder, holdsOnlyAtRest, vibrationCaveat }: Holding): string {
  if (holdsOnlyAtRest) return `${HOLDERS[holder]}; friction at rest keeps it until a knock starts it`;
  return vibrationCaveat ? `${HOLDERS[holder]}; vibration can take it away` : HOLDERS[holder];
}

const brakeAtScrew = { id: 'drive.brake-at-screw', title: 'Brake torque at the screw', symbol: 'T_bs', quantity: 'torque', meaning: 'Torque that the brake of one drive holds, seen at its screw.', onlyWith: ['brake'], rank: 3 } as const;

export default [
  figure({
    ...brakeAtScrew,
    needs: { torque: 'brake.holding-torque' },
    optional: { ratio: 'drive.reduction-ratio', units: 'drive.units' },
    choices: { at: 'brake.at' },
    optionalChoices: { motors: 'drive.motors' },
    onlyWhere: { 'drive.transmission': ['screw'], 'brake.at': ['motor', 'screw', 'shaft'] },
    compute: ({ torque, ratio, units, at, motors }) =>
      // One motor for all units has one brake, and each screw gets its share.
      at === 'motor' ? torqueThroughReduction(torque, ratio ?? 1) / (motors === 'shared' ? (units ?? 1) : 1) : torque,
    formula: 'T_bs = T_b · i at the motor, T_b at the screw',
    sources: [{ title: 'power balance of the reduction; its friction is left out, the cautious side' }],
  }),
  figure({
    ...brakeAtScrew,
    needs: { force: 'brake.holding-force', lead: 'screw.lead' },
    onlyWhere: { 'drive.transmission': ['screw'], 'brake.at': ['rail'] },
    compute: ({ force, lead }) => (force * lead) / (2 * Math.PI),
    formula: 'T_bs = F_b l / 2π',
    sources: [{ title: 'work balance over one turn; the thread is taken as free of friction' }],
  }),
  figure({
    id: 'drive.brake-factor',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Brake over the load without friction',
    symbol: 's_b',
    quantity: 'ratio',
    meaning: 'Torque of the brake over the torque of the resting load, thread friction not counted, since vibration can take it away.',
    needs: { brake: 'drive.brake-at-screw', load: 'drive.gravity-load', lead: 'screw.lead' },
    onlyWith: ['brake'],
    compute: ({ brake, load, lead }) => (load === 0 ? unable(HOLDERS.balance) : brake / ((Math.abs(load) * lead) / (2 * Math.PI))),
    formula: 's_b = T_bs / (F₀ l/(2π))',
    sources: [{ title: 'work balance over one turn; 1.5 to 2 is common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'drive.collar-at-rest',
    title: 'Friction torque of the plain thrust face',
    symbol: 'T_c',
    quantity: 'torque',
    meaning: 'Torque with which a plain thrust face resists the resting load. A rolling bearing in its place would resist with next to nothing.',
    needs: { ...bearingNeeds, load: 'drive.gravity-load' },
    choices: holdingChoices,
    onlyWhere: { 'thrust-bearing.design': ['plain'] },
    compute: (values) => plainCollarTorque(Math.abs(values.load), values),
    formula: 'T_c = F₀ µ_c d_c/2',
    sources: [{ title: 'Budynas and Nisbett', where: 'section 8-2, equation (8-6)' }],
    rank: 3,
  }),
  figure({
    id: 'drive.holding-verdict',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'With power off',
    symbol: 'H',
    quantity: 'ratio',
    meaning: 'What the axis does when the motor has no current: it holds, may creep, or drops. The worst end of the friction decides.',
    needs: holdingNeeds,
    optional: { ...holdingOptions, balance: 'counterbalance.carried-force' },
    optionalChoices: holdingChoices,
    compute: (values) => {
      const holding = holdingOf(values);
      // A counterbalance that carries just the weight may do so at one end of what is uncertain only: the others have their verdict.
      return holding.holder === 'balance' && values.balance === undefined ? unable(HOLDERS.balance) : { value: HOLDING_RANK[holding.verdict], note: remark(holding) };
    },
    formula: 'holds: thread s ≥ 1.5, or brake ≥ 1.5 F₀ l/(2π); may creep: s ≥ 1, or η_i,r ≤ 0, or T_c + T_d + T_b ≥ F₀ d₂/2 · tan(λ − φ′); else drops',
    sources,
    rank: 1,
    inWords: holdingInWords,
    hint: holdingHint,
  }),
  figure({
    id: 'drive.holding-factor',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Holding factor with power off',
    symbol: 's_h',
    quantity: 'ratio',
    meaning: 'What holds over what drives, with power off. Thread: µ′/tan λ; brake: its torque over that of the load without friction; anything else: what resists over what the thread lets through.',
    needs: holdingNeeds,
    optional: holdingOptions,
    optionalChoices: holdingChoices,
    compute: (values) => {
      const holding = holdingOf(values);
      return Number.isFinite(holding.factor) ? { value: holding.factor, note: remark(holding) } : unable(HOLDERS[holding.holder]);
    },
    formula: 'µ′/tan λ, or T_b / (F₀ l/(2π)), or (T_c + T_d + T_b) / (F₀ d₂/2 · tan(λ − φ′))',
    sources,
    rank: 2,
  }),
];
