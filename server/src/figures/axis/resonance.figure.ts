import { axialResonance } from '../../mechanics/axial-stiffness.ts';
import { between, inertiaAlongAxis, toGround, vibrationModes } from '../../mechanics/spring-mass-chain.ts';
import { figure, unable } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';
import { beltAxisChoices, beltAxisMaybe, beltAxisNeeds, beltAxisOf, beltAxisOptions, describedAt, lowestAt } from './belt-axis.ts';

const belts = { 'drive.transmission': ['belt'] } as const;
const othersWithSteppers = { 'drive.transmission': ['screw', 'rack'], 'motor.kind': ['stepper'] } as const;
const othersWithServos = { 'drive.transmission': ['screw', 'rack'], 'motor.kind': ['dc-motor', 'brushless'] } as const;
const vibrations = { title: 'Rao, Mechanical Vibrations', where: 'chapters 5 and 6', weak: true } as const;
const lowest = { title: 'Lowest resonance of the axis', symbol: 'f_1', quantity: 'frequency', unit: 'Hz' } as const;

const turnsOf = (axial: number): number => axial / (2 * Math.PI);

export default [
  figure({
    ...lowest,
    id: 'axis.resonance',
    onlyWhere: othersWithSteppers,
    meaning: 'Lowest frequency at which rotor and load swing together on the magnetic spring and the stiffness of the drive.',
    needs: { stiffness: 'drive.axial-stiffness', mass: 'axis.moved-mass', share: 'drive.load-share', perTurn: 'drive.travel-per-shaft-turn' },
    optional: {
      counterweight: 'counterbalance.mass', magnetic: 'motor.magnetic-stiffness', rotor: 'motor.rotor-inertia', wheels: 'drive.reduction-inertia', shaft: 'drive.shaft-inertia',
      coupling: 'coupling.rotational-inertia', ratio: 'drive.reduction-ratio', units: 'drive.units',
    },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ stiffness, mass, share, perTurn, counterweight = 0, magnetic, rotor, wheels = 0, shaft = 0, coupling = 0, ratio = 1, units = 1, motors }) => {
      const load = (mass + counterweight) * share;
      if (magnetic === undefined || rotor === undefined) return { value: turnsOf(axialResonance(stiffness, load)), note: 'the rotor taken as held, since the motor is not known' };
      const shafts = shaftsPerMotor(motors, units);
      const lever = perTurn / (2 * Math.PI);
      const field = (magnetic * ratio ** 2) / shafts / lever ** 2;
      // The stiffness of the drive has the field in series; what is left of it is the mechanics.
      const mechanics = 1 / (1 / stiffness - 1 / field);
      const turning = inertiaAlongAxis(((rotor + wheels) * ratio ** 2) / shafts + shaft + coupling, lever);
      if (!(mechanics > 0 && Number.isFinite(mechanics))) return turnsOf(Math.sqrt(field / (load + turning)));
      const { modes } = vibrationModes([{ name: 'motor', mass: turning }, { name: 'load', mass: load }], [toGround('magnetic spring', field, 'motor'), between('drive', mechanics, 'load', 'motor')], 1);
      const mode = modes[0];
      if (!mode) return unable('nothing swings');
      const magneticShare = Math.round((mode.giveShares['magnetic spring'] ?? 0) * 100);
      return { value: turnsOf(mode.angularFrequency), note: `of the give: magnetic spring ${magneticShare} %, drive ${100 - magneticShare} %` };
    },
    formula: 'K φ = (2π f₁)² M φ of two masses: what turns, J (2π/p_w)², on the magnetic spring, and m q_F on the rest of k',
    sources: [vibrations],
    rank: 2,
  }),
  figure({
    ...lowest,
    id: 'axis.resonance',
    onlyWhere: othersWithServos,
    meaning: 'Frequency at which the moved mass swings on the stiffness of its drive while the motor holds its rotor.',
    needs: { stiffness: 'drive.axial-stiffness', mass: 'axis.moved-mass', share: 'drive.load-share' },
    optional: { counterweight: 'counterbalance.mass' },
    compute: ({ stiffness, mass, share, counterweight = 0 }) => ({
      value: turnsOf(axialResonance(stiffness, (mass + counterweight) * share)),
      note: 'the rotor taken as held by its control; where the control lets go, rotor and load swing against each other, faster',
    }),
    formula: 'f₁ = 1/(2π) · √(k / (q_F (m + m_c)))',
    sources: [vibrations],
    rank: 2,
  }),
  figure({
    ...lowest,
    id: 'axis.resonance',
    onlyWhere: belts,
    meaning: 'Lowest frequency at which the carriage swings on belt, reduction and magnetic spring, where in its travel it is lowest: with a loop at the end far from the motor.',
    needs: beltAxisNeeds,
    optional: beltAxisOptions,
    choices: beltAxisChoices,
    optionalChoices: beltAxisMaybe,
    compute: (values) => {
      const inUse = beltAxisOf(values);
      if (typeof inUse === 'string') return unable(inUse);
      const held = inUse.isMagnetic ? '' : '; the rotor taken as held';
      return { value: lowestAt(inUse, inUse.softest), note: describedAt(inUse, inUse.softest) + held };
    },
    formula: 'K φ = (2π f₁)² M φ, with k = c_b/L of each run of belt, k_i/r², k_m i²/r²; m q_F, J/r², J_m i²/r²',
    sources: [vibrations],
    rank: 1,
    hint: ({ low }) => `swings at ${low >= 100 ? low.toFixed(0) : low.toPrecision(2)} Hz`,
    chart: {
      title: 'Resonance over the travel',
      alt: (values) => {
        const inUse = beltAxisOf(values);
        if (typeof inUse === 'string') return inUse;
        return `Lowest resonance over the travel, from ${Math.round(lowestAt(inUse, inUse.stiffest))} Hz down to ${Math.round(lowestAt(inUse, inUse.softest))} Hz where the belt is softest.`;
      },
      x: { title: 'Position in the travel', quantity: 'length', unit: 'mm', from: () => 0, to: (values) => endOf(beltAxisOf(values)) },
      y: { title: 'Lowest resonance', quantity: 'frequency', unit: 'Hz' },
      curves: [{ title: 'carriage on its belt', y: (x, values) => at(beltAxisOf(values), x) }],
      points: [{ title: 'softest place', x: (values) => placeOf(beltAxisOf(values)), y: (values) => at(beltAxisOf(values), placeOf(beltAxisOf(values))) }],
    },
  }),
  figure({
    id: 'axis.resonance-span',
    onlyWhere: belts,
    title: 'Resonance at the stiffest place over the lowest',
    symbol: 'q_f',
    quantity: 'ratio',
    meaning: 'How far the lowest resonance moves over the travel: a controller that is tuned to one place misses the other by this factor.',
    needs: beltAxisNeeds,
    optional: { lowest: 'axis.resonance', ...beltAxisOptions },
    choices: beltAxisChoices,
    optionalChoices: beltAxisMaybe,
    compute: ({ lowest: least, ...values }) => {
      const inUse = beltAxisOf(values);
      if (typeof inUse === 'string') return unable(inUse);
      const best = lowestAt(inUse, inUse.stiffest);
      return { value: best / (least ?? lowestAt(inUse, inUse.softest)), note: `${best.toPrecision(3)} Hz at the stiffest place` };
    },
    formula: 'q_f = f₁(x_stiff) / f₁(x_soft)',
    sources: [vibrations],
    rank: 3,
  }),
];

type InUse = ReturnType<typeof beltAxisOf>;

const endOf = (inUse: InUse): number => (typeof inUse === 'string' ? 1 : inUse.to - inUse.from);
const placeOf = (inUse: InUse): number => (typeof inUse === 'string' ? Number.NaN : inUse.softest - inUse.from);
const at = (inUse: InUse, x: number): number => (typeof inUse === 'string' ? Number.NaN : lowestAt(inUse, inUse.from + x));
