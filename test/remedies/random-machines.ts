import fc from 'fast-check';
import { yamlOf, type PlainMachine } from '../support/machines.ts';

/**
 * Plausible machines, drawn at random: what people build, with the slips that they make. Everything here is invented;
 * sizes and data lie within what is usual, so that findings come from combinations and not from nonsense.
 */

/** Motors whose data go together, as on ordinary sheets; the last two come without winding data, as bought second-hand. */
const motors = [
  { frame: 'NEMA 17', 'holding-torque': '0.28 N·m', current: '1.2 A', resistance: '2.8 Ω', inductance: '4.2 mH', 'rotor-inertia': '38 g·cm²', 'shaft-diameter': '5 mm' },
  { frame: 'NEMA 17', 'holding-torque': '0.42 N·m', current: '1.5 A', resistance: '1.8 Ω', inductance: '3.6 mH', 'rotor-inertia': '54 g·cm²', 'shaft-diameter': '5 mm', 'detent-torque': '15 N·mm' },
  { frame: 'NEMA 17', 'holding-torque': '0.56 N·m', current: '2 A', resistance: '1.4 Ω', inductance: '3 mH', 'rotor-inertia': '82 g·cm²', 'shaft-diameter': '5 mm' },
  { frame: 'NEMA 23', 'holding-torque': '1.2 N·m', current: '2.8 A', resistance: '0.9 Ω', inductance: '2.5 mH', 'rotor-inertia': '280 g·cm²', 'shaft-diameter': '6.35 mm' },
  { frame: 'NEMA 23', 'holding-torque': '1.9 N·m', current: '3 A', resistance: '1.1 Ω', inductance: '4 mH', 'rotor-inertia': '460 g·cm²', 'shaft-diameter': '8 mm' },
  { frame: 'NEMA 17', 'holding-torque': '0.42 N·m', current: '1.5 A', 'shaft-diameter': '5 mm' },
  { frame: 'NEMA 23', 'holding-torque': '1.2 N·m', current: '2.8 A' },
] as const;

const of = fc.constantFrom;
const whole = (min: number, max: number, unit: string, factor = 1): fc.Arbitrary<string> => fc.integer({ min, max }).map((value) => `${Number((value * factor).toPrecision(6))} ${unit}`);
/** Left out once in so many times: most people leave out what a handbook can say. */
const maybe = <T>(value: fc.Arbitrary<T>, onceIn = 2): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined, freq: onceIn });

const shared = {
  direction: of('vertical', 'vertical', 'horizontal', '30°'),
  travel: fc.integer({ min: 80, max: 700 }),
  overhang: fc.integer({ min: 20, max: 150 }),
  acceleration: whole(1, 60, 'mm/s²', 50),
  duty: maybe(whole(1, 100, '%')),
  guideFriction: maybe(whole(1, 20, 'N')),
  processForce: maybe(of('0 N to 20 N', '0 N to 60 N', '15 N')),
  resolution: maybe(of('0.01 mm', '0.05 mm')),
  layerHeight: maybe(of('0.2 mm', '0.25 mm', '0.33 mm')),
  catcher: maybe(of('none', 'mechanical-stop', 'latch')),
  peopleBelow: maybe(of('possible', 'guarded')),
  motor: of(...motors),
  motorPosition: maybe(of('above', 'below')),
  currentShare: fc.integer({ min: 4, max: 12 }),
  currentAs: maybe(of('peak', 'rms'), 4),
  restCurrent: maybe(whole(3, 10, '%', 10)),
  voltage: of('12 V', '24 V', '24 V', '36 V', '48 V'),
  supplyCurrent: maybe(whole(2, 15, 'A')),
  capacitance: maybe(of('470 µF', '4.7 mF')),
  controller: maybe(of(['20 kHz', 1], ['20 kHz', 8], ['100 kHz', 16], ['100 kHz', 32], ['200 kHz', 16], ['200 kHz', 128], [undefined, 16]), 6),
  coupling: maybe(fc.record({ form: of('rigid', 'jaw', 'beam', 'bellows', 'disc', 'oldham'), motorBore: of('5 mm', '6.35 mm', '8 mm'), screwBore: of('6 mm', '8 mm', '10 mm', '12 mm'), told: fc.boolean() }), 4),
  thrustBearing: maybe(of('angular-contact', 'angular-contact', 'ball-thrust', 'deep-groove', 'plain', 'none'), 4),
  endSupports: maybe(of('fixed-free', 'supported-free', 'supported-supported', 'fixed-supported', 'fixed-fixed'), 5),
  thrustEnd: maybe(of('motor', 'both')),
  mounting: maybe(of('rigid', 'decoupled')),
  lateral: maybe(of('200 N/mm', '2 kN/mm')),
  units: maybe(of(1, 1, 2, 3)),
  motorsShared: maybe(of('one-each', 'shared')),
  brake: fc.oneof({ weight: 4, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: of({ 'holding-torque': '0.05 N·m', at: 'motor' }, { 'holding-torque': '0.4 N·m', at: 'motor' }) }),
  reduction: fc.oneof({ weight: 5, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: of([{ kind: 'belt', ratio: '2' }], [{ kind: 'planetary', ratio: '5' }]) }),
} as const;

const sliding = {
  accuracy: maybe(of('0.1 mm', '0.2 mm', '0.5 mm')),
  size: of('Tr8x8(P2)', 'Tr8x1.5', 'Tr8x2', 'Tr8x4(P2)', 'Tr10x2', 'Tr10x3', 'Tr12x3', 'Tr12x6(P3)', 'Tr16x4', 'Tr20x4'),
  grade: maybe(of('rolled', 'whirled')),
  speed: whole(2, 120, 'mm/s'),
  mass: whole(1, 50, 'kg'),
  massSpread: of('', ' ± 5 %'),
  nutDesign: maybe(of('plain', 'plain', 'spring-loaded', 'adjustable')),
  material: of('bronze', 'brass', 'pom', 'filled-polymer'),
  lubrication: maybe(of('dry', 'grease', 'oil'), 4),
  nutLength: maybe(whole(8, 40, 'mm'), 4),
  preload: of('10 N', '40 N'),
  life: fc.constant(undefined),
  ratings: fc.constant(undefined),
  distance: maybe(of('20 km', '200 km')),
} as const;

const ball = {
  accuracy: maybe(of('0.05 mm', '0.1 mm', '0.3 mm')),
  size: of('1204', '1605', '1605', '1610', '2005', '2510'),
  grade: maybe(of('T10', 'T7', 'P5')),
  speed: whole(1, 80, 'mm/s', 5),
  mass: whole(1, 60, 'kg'),
  massSpread: of('', ' ± 5 %'),
  nutDesign: maybe(of('ball', 'preloaded-ball')),
  material: fc.constant(undefined),
  lubrication: fc.constant('grease'),
  nutLength: maybe(whole(30, 50, 'mm')),
  preload: of('150 N', '900 N'),
  life: maybe(of('2000 h', '10000 h')),
  ratings: maybe(of({ 'dynamic-rating': '8 kN', 'static-rating': '14 kN' })),
  distance: fc.constant(undefined),
} as const;

type Drawn<T> = { readonly [key in keyof T]: T[key] extends fc.Arbitrary<infer V> ? V : never };

/** Entries without a value are left out. */
function written(entries: Readonly<Record<string, unknown>>): PlainMachine {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));
}

function machineOf(drawn: Drawn<typeof shared> & (Drawn<typeof sliding> | Drawn<typeof ball>)): PlainMachine {
  const { motor, coupling, travel } = drawn;
  const rated = Number.parseFloat(motor.current);
  const preloaded = drawn.nutDesign === 'spring-loaded' || drawn.nutDesign === 'preloaded-ball';
  const units = drawn.units ?? 1;
  return written({
    'description-version': 1,
    machine: 'Drawn at random',
    controller: drawn.controller && written({ 'step-rate': drawn.controller[0], microsteps: drawn.controller[1] }),
    supplies: { main: written({ kind: 'extra-low-voltage', voltage: drawn.voltage, current: drawn.supplyCurrent, capacitance: drawn.capacitance, 'voltage-limit': drawn.capacitance && `${Number.parseFloat(drawn.voltage) * 1.2} V` }) },
    masses: { load: { mass: `${drawn.mass}${drawn.massSpread}` } },
    axes: {
      axis: written({
        direction: drawn.direction,
        travel: `${travel} mm`,
        moves: ['load'],
        motion: written({ speed: drawn.speed, acceleration: drawn.acceleration, duty: drawn.duty, 'distance-per-year': drawn.distance }),
        guides: drawn.guideFriction === undefined && drawn.lateral === undefined ? undefined : written({ 'friction-force': drawn.guideFriction, 'lateral-stiffness': drawn.lateral }),
        'process-force': drawn.processForce,
        accuracy: drawn.accuracy,
        resolution: drawn.resolution,
        'layer-height': drawn.direction === 'vertical' ? drawn.layerHeight : undefined,
        life: drawn.life,
        catcher: drawn.direction === 'horizontal' ? undefined : drawn.catcher,
        'people-below': drawn.peopleBelow,
        drive: written({
          units: drawn.units,
          motor: 'motor',
          motors: units > 1 ? drawn.motorsShared : undefined,
          'motor-position': drawn.direction === 'horizontal' ? undefined : drawn.motorPosition,
          supply: 'main',
          'current-setting': `${Number(((rated * drawn.currentShare) / 10).toPrecision(2))} A`,
          'current-setting-as': drawn.currentAs,
          'rest-current': drawn.restCurrent,
          reduction: drawn.reduction,
          coupling: coupling && { form: coupling.form, ...(coupling.told ? { bores: [coupling.motorBore, coupling.screwBore] } : {}) },
          screw: written({
            size: drawn.size,
            grade: drawn.grade,
            'end-supports': drawn.endSupports,
            'unsupported-length': `${travel + drawn.overhang} mm`,
            'thrust-end': drawn.thrustEnd,
            'thrust-bearing': drawn.thrustBearing && { design: drawn.thrustBearing },
          }),
          nut: written({
            design: drawn.nutDesign,
            material: drawn.material,
            lubrication: drawn.lubrication,
            length: drawn.nutLength,
            preload: preloaded ? drawn.preload : undefined,
            mounting: drawn.mounting,
            ...drawn.ratings,
          }),
          brake: drawn.direction === 'horizontal' ? undefined : drawn.brake,
        }),
      }),
    },
    parts: { motor: { kind: 'stepper', ...motor, 'step-angle': '1.8°' } },
  });
}

/** The texts of machines on sliding screws. */
export const slidingMachines: fc.Arbitrary<string> = fc.record({ ...shared, ...sliding }).map((drawn) => yamlOf(machineOf(drawn)));

/** The texts of machines on ball screws. */
export const ballMachines: fc.Arbitrary<string> = fc.record({ ...shared, ...ball }).map((drawn) => yamlOf(machineOf(drawn)));

export const machines: fc.Arbitrary<string> = fc.oneof(slidingMachines, ballMachines);
