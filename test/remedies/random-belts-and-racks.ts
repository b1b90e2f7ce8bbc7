import fc from 'fast-check';
import { yamlOf, type PlainMachine } from '../support/machines.ts';

/**
 * Plausible machines without a screw, drawn at random: belts lying and hanging, racks, two motors on crossed belts, gantries. Everything
 * here is invented; sizes lie within what is usual, so that findings come from combinations and not from nonsense.
 */

const steppers = [
  { frame: 'NEMA 17', 'holding-torque': '0.42 N·m', current: '1.5 A', resistance: '1.8 Ω', inductance: '3.6 mH', 'rotor-inertia': '54 g·cm²', 'shaft-diameter': '5 mm', 'detent-torque': '15 N·mm' },
  { frame: 'NEMA 17', 'holding-torque': '0.56 N·m', current: '2 A', resistance: '1.4 Ω', inductance: '3 mH', 'rotor-inertia': '82 g·cm²', 'shaft-diameter': '5 mm' },
  { frame: 'NEMA 23', 'holding-torque': '1.2 N·m', current: '2.8 A', resistance: '0.9 Ω', inductance: '2.5 mH', 'rotor-inertia': '280 g·cm²', 'shaft-diameter': '6.35 mm' },
  { frame: 'NEMA 23', 'holding-torque': '1.9 N·m', current: '3 A', resistance: '1.1 Ω', inductance: '4 mH', 'rotor-inertia': '460 g·cm²', 'shaft-diameter': '8 mm', feedback: 'encoder' },
] as const;

const servos = [
  {
    kind: 'brushless', 'torque-constant': '0.07 N·m/A', 'torque-constant-as': 'rms', resistance: '0.7 Ω', inductance: '1.1 mH', 'pole-pairs': 4, 'continuous-torque': '0.3 N·m', 'peak-torque': '0.9 N·m',
    'speed-limit': '3000 rpm', 'rotor-inertia': '110 g·cm²', 'encoder-counts': 4000, 'shaft-diameter': '8 mm',
  },
  {
    kind: 'dc-motor', 'torque-constant': '0.05 N·m/A', resistance: '0.6 Ω', inductance: '0.8 mH', 'no-load-current': '0.3 A', 'continuous-torque': '0.15 N·m', 'peak-torque': '0.6 N·m', 'speed-limit': '3500 rpm',
    'rotor-inertia': '180 g·cm²', 'encoder-counts': 2000, 'shaft-diameter': '8 mm',
  },
] as const;

const of = fc.constantFrom;
const whole = (min: number, max: number, unit: string, factor = 1): fc.Arbitrary<string> => fc.integer({ min, max }).map((value) => `${Number((value * factor).toPrecision(6))} ${unit}`);
/** Left out once in so many times: most people leave out what a handbook can say. */
const maybe = <T>(value: fc.Arbitrary<T>, onceIn = 2): fc.Arbitrary<T | undefined> => fc.option(value, { nil: undefined, freq: onceIn });

/** Entries without a value are left out. */
const written = (entries: Readonly<Record<string, unknown>>): PlainMachine => Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== undefined));

const belts = [
  { profile: 'T5', widths: [8, 10, 16], teeth: [12, 16, 20, 24], body: 'polyurethane' },
  { profile: 'AT5', widths: [10, 16], teeth: [16, 20, 24], body: 'polyurethane' },
  { profile: 'AT3', widths: [6, 10, 16], teeth: [16, 20, 30], body: 'polyurethane' },
  { profile: 'curvilinear 2 mm', widths: [6, 9], teeth: [16, 20, 32], body: 'rubber' },
  { profile: 'curvilinear 3 mm', widths: [9, 15], teeth: [18, 24], body: 'rubber' },
  { profile: 'XL', widths: [6.35, 9.53], teeth: [12, 16], body: 'rubber' },
] as const;

const motion = fc.record({ speed: whole(5, 60, 'mm/s', 10), acceleration: whole(2, 30, 'mm/s²', 200), jerk: maybe(whole(1, 30, 'm/s³', 5), 1), duty: maybe(whole(5, 60, '%')) }).map(written);

const beltDrive = (travel: number): fc.Arbitrary<PlainMachine> =>
  fc.record({
    belt: of(...belts), width: fc.nat(2), teeth: fc.nat(3), tension: whole(1, 12, 'N', 10), near: fc.integer({ min: 30, max: 120 }), cord: fc.boolean(),
    idlerTeeth: maybe(fc.nat(3)), side: maybe(of('teeth', 'back')), overhang: maybe(whole(7, 20, 'mm')), support: maybe(of('motor', 'outboard'), 1),
  }).map(({ belt, width, teeth, tension, near, cord, idlerTeeth, side, overhang, support }) => written({
    'shaft-support': support,
    belt: written({
      profile: belt.profile, width: `${belt.widths[width % belt.widths.length]} mm`, body: belt.body, cord: cord ? (belt.body === 'rubber' ? 'glass' : 'steel') : undefined,
      'center-distance': `${travel + near + 120} mm`, 'nearest-distance': `${near} mm`, tension,
    }),
    pulley: written({ teeth: belt.teeth[teeth % belt.teeth.length], bore: '5 mm', overhang }),
    idlers: written({ count: 1, teeth: idlerTeeth === undefined ? undefined : belt.teeth[idlerTeeth % belt.teeth.length], side }),
  }));

const rackDrive: fc.Arbitrary<PlainMachine> = fc.record({
  module: of('0.8 mm', '1 mm', '1.5 mm'), teeth: of(14, 18, 20, 25, 30), width: maybe(of('8 mm', '12 mm', '15 mm'), 5), material: of('steel', 'hardened-steel', 'brass'), pitch: maybe(of('0.03 mm', '0.08 mm')), preload: maybe(of('20 N', '60 N'), 1),
}).map(({ module, teeth, width, material, pitch, preload }) => ({ rack: written({ module, 'face-width': width, material: 'steel', 'pitch-error': pitch, preload }), pinion: written({ teeth, bore: '8 mm', material, overhang: '14 mm' }) }));

const reduction = fc.oneof(
  { weight: 3, arbitrary: fc.constant(undefined) },
  { weight: 1, arbitrary: of([{ kind: 'belt', 'driving-teeth': 16, 'driven-teeth': 48 }], [{ kind: 'belt', ratio: 2 }]) },
  { weight: 1, arbitrary: of([{ kind: 'planetary', ratio: 5, backlash: '0.3°', 'torsional-stiffness': '600 N·m/rad', 'torque-rating': '4 N·m' }]) },
);

/** A motor with what belongs to it: steppers have a setting, the others an amplifier. */
const motor = fc.oneof(
  { weight: 4, arbitrary: fc.record({ one: of(...steppers), share: fc.integer({ min: 5, max: 11 }), as: maybe(of('peak', 'rms'), 4) }).map(({ one, share, as }) => ({ part: { kind: 'stepper', ...one, 'step-angle': '1.8°' }, drive: written({ 'current-setting': `${Number(((Number.parseFloat(one.current) * share) / 10).toPrecision(2))} A`, 'current-setting-as': as }) })) },
  { weight: 1, arbitrary: fc.record({ one: of(...servos), limit: whole(4, 16, 'A') }).map(({ one, limit }) => ({ part: one, drive: { 'current-limit': limit } })) },
);

const shared = { motor, reduction, mass: fc.integer({ min: 4, max: 80 }), spread: of('', ' ± 10 %'), travel: fc.integer({ min: 20, max: 120 }).map((value) => 10 * value), accuracy: maybe(of('0.1 mm', '0.3 mm', '1 mm')), friction: maybe(whole(2, 12, 'N')), voltage: of('24 V', '36 V', '48 V') };

interface Parts {
  readonly motor: { readonly part: PlainMachine | (typeof servos)[number]; readonly drive: PlainMachine };
  readonly voltage: string;
}

/** Everything by itself: what two axes have in common is written twice, and not by an alias. */
const apart = (plain: PlainMachine): PlainMachine => JSON.parse(JSON.stringify(plain)) as PlainMachine;

const machineOf = ({ motor: { part }, voltage }: Parts, rest: PlainMachine): string => yamlOf(apart({
  'description-version': 1, machine: 'Drawn at random', controller: { 'step-rate': '200 kHz', microsteps: 16 }, supplies: { main: { kind: 'extra-low-voltage', voltage, current: '10 A' } }, ...rest, parts: { motor: part },
}));

const drive = ({ motor: { drive: setting } }: Parts, stages: unknown, rest: PlainMachine): PlainMachine => written({ motor: 'motor', supply: 'main', ...setting, reduction: stages, ...rest });

/** One axis on a belt, lying or hanging. */
export const beltMachines: fc.Arbitrary<string> = fc.record({
  ...shared, direction: of('horizontal', 'vertical'), motion, catcher: maybe(of('none', 'latch'), 1), units: maybe(of(1, 2)),
  brake: of(undefined, undefined, { 'holding-torque': '0.2 N·m', at: 'motor' }, { 'holding-force': '60 N', at: 'rail' }),
}).chain((drawn) => beltDrive(drawn.travel).map((own) => machineOf(drawn, {
  masses: { slide: { mass: `${drawn.mass / 10} kg${drawn.spread}` } },
  axes: {
    run: written({
      direction: drawn.direction, travel: `${drawn.travel} mm`, moves: ['slide'], motion: drawn.motion, guides: drawn.friction && { 'friction-force': drawn.friction }, accuracy: drawn.accuracy,
      catcher: drawn.direction === 'vertical' ? drawn.catcher : undefined,
      drive: drive(drawn, drawn.reduction, { ...own, ...written({ units: drawn.units, brake: drawn.direction === 'vertical' ? drawn.brake : undefined }) }),
    }),
  },
})));

/** One axis on a rack. */
export const rackMachines: fc.Arbitrary<string> = fc.record({ ...shared, direction: of('horizontal', 'horizontal', 'vertical'), motion, own: rackDrive }).map((drawn) => machineOf(drawn, {
  masses: { slide: { mass: `${drawn.mass / 5} kg${drawn.spread}` } },
  axes: { run: written({ direction: drawn.direction, travel: `${drawn.travel} mm`, moves: ['slide'], motion: drawn.motion, guides: drawn.friction && { 'friction-force': drawn.friction }, accuracy: drawn.accuracy, drive: drive(drawn, drawn.reduction, drawn.own) }) },
}));

/** Two axes on crossed belts. */
export const crossedMachines: fc.Arbitrary<string> = fc.record({
  ...shared, first: motion, second: motion, beam: fc.integer({ min: 4, max: 40 }), lengths: of(['2.6 m', '2.7 m'], ['2.6 m', '3.1 m']), tensions: of(undefined, ['80 N', '84 N'], ['60 N', '90 N']),
}).chain((drawn) => beltDrive(600).map((own) => machineOf(drawn, {
  masses: { head: { mass: `${drawn.mass / 20} kg` }, beam: { mass: `${drawn.beam / 10} kg` } },
  layout: written({ kind: 'crossed-belts', axes: ['across', 'along'], drive: drive(drawn, drawn.reduction, own), 'path-lengths': drawn.lengths, 'path-tensions': drawn.tensions }),
  axes: {
    across: written({ direction: 'horizontal', travel: '500 mm', moves: ['head'], motion: drawn.first, accuracy: drawn.accuracy }),
    along: written({ direction: 'horizontal', travel: '600 mm', moves: ['head', 'beam'], motion: drawn.second, accuracy: drawn.accuracy }),
  },
})));

/** A gantry on two belts or two racks, and the axis on it. */
export const gantryMachines: fc.Arbitrary<string> = fc.record({ ...shared, motion, across: motion, head: fc.integer({ min: 4, max: 40 }), onRacks: fc.boolean(), rack: rackDrive }).chain((drawn) =>
  fc.tuple(beltDrive(drawn.travel), beltDrive(500)).map(([own, other]) => machineOf(drawn, {
    masses: { gantry: { mass: `${drawn.mass / 10} kg${drawn.spread}` }, head: { mass: `${drawn.head / 10} kg` } },
    axes: {
      along: written({
        direction: 'horizontal', travel: `${drawn.travel} mm`, moves: ['gantry', 'head'], motion: drawn.motion, accuracy: drawn.accuracy,
        drive: drive(drawn, drawn.reduction, { ...(drawn.onRacks ? drawn.rack : own), units: 2, motors: 'one-each', 'unit-spacing': '700 mm', carries: 'across' }),
      }),
      across: written({ direction: 'horizontal', travel: '500 mm', moves: ['head'], motion: drawn.across, accuracy: drawn.accuracy, drive: drive(drawn, drawn.reduction, other) }),
    },
  })),
);

export const otherMachines: fc.Arbitrary<string> = fc.oneof({ weight: 3, arbitrary: beltMachines }, { weight: 2, arbitrary: rackMachines }, { weight: 1, arbitrary: crossedMachines }, { weight: 1, arbitrary: gantryMachines });
