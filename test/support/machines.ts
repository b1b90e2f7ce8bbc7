import { stringify } from 'yaml';

/** A machine as plain data, from which test texts are made. */
export type PlainMachine = { [key: string]: unknown };

/**
 * Base machines for tests: invented, healthy, and complete, so that one changed entry decides a case.
 * They are data for tests only; no expected value is taken from them.
 */
const bases: Readonly<Record<string, () => PlainMachine>> = {
  /** A vertical axis on two trapezoidal screws. */
  lift: () => ({
    'description-version': 1,
    machine: 'Test lift',
    controller: { 'step-rate': '200 kHz', microsteps: 16 },
    supplies: { main: { kind: 'extra-low-voltage', voltage: '24 V', current: '10 A' } },
    masses: { plate: { mass: '4 kg' } },
    axes: {
      lift: {
        direction: 'vertical',
        travel: '300 mm',
        moves: ['plate'],
        motion: { speed: '10 mm/s', acceleration: '200 mm/s²', duty: '5 %' },
        guides: { 'friction-force': '4 N' },
        drive: {
          units: 2,
          motor: 'lift-motor',
          'motor-position': 'above',
          supply: 'main',
          'current-setting': '1.5 A',
          'current-setting-as': 'peak',
          coupling: { form: 'bellows', bores: ['5 mm', '8 mm'] },
          screw: {
            size: 'Tr12x3', material: 'steel', grade: 'rolled', 'end-supports': 'fixed-supported', 'unsupported-length': '340 mm',
            'thrust-bearing': { design: 'angular-contact' },
          },
          nut: { design: 'plain', material: 'bronze', lubrication: 'grease', length: '24 mm', mounting: 'decoupled' },
          brake: { 'holding-torque': '0.1 N·m', at: 'screw' },
        },
      },
    },
    parts: {
      'lift-motor': {
        kind: 'stepper', frame: 'NEMA 17', 'holding-torque': '0.45 N·m', 'detent-torque': '15 N·mm', current: '1.5 A',
        resistance: '2 Ω', inductance: '3.5 mH', 'rotor-inertia': '68 g·cm²', 'step-angle': '1.8°', 'shaft-diameter': '5 mm',
      },
    },
  }),
  /** A vertical axis on one ball screw with a brake. */
  'ball-lift': () => {
    const machine = base('lift');
    const drive = at(machine, ['axes', 'lift', 'drive']);
    drive['units'] = 1;
    drive['screw'] = {
      size: '1605', grade: 'T7', material: 'steel', 'end-supports': 'fixed-supported', 'unsupported-length': '360 mm', 'thrust-bearing': { design: 'angular-contact' },
    };
    drive['nut'] = { design: 'ball', lubrication: 'grease', 'dynamic-rating': '9 kN', 'static-rating': '15 kN', mounting: 'rigid' };
    drive['brake'] = { 'holding-torque': '0.5 N·m', at: 'motor' };
    drive['coupling'] = { form: 'bellows', bores: ['5 mm', '10 mm'] };
    return machine;
  },
  /**
   * A bed on three screws, exactly constrained: a carriage under a ball and a fork hold x, y and the turn, three floating nuts the height and both tilts.
   * The centre of gravity lies in the middle of the triangle of nuts: (0, 0), (300, 0), (150, 300) mm.
   */
  bed: () => {
    const machine = base('lift');
    machine['masses'] = { plate: { mass: '6 kg', at: ['150 mm', '100 mm'] } };
    machine['conditions'] = { 'ambient-temperature': '20 °C', 'machine-temperature': '20 °C', 'frame-material': 'steel' };
    const axis = at(machine, ['axes', 'lift']);
    axis['guides'] = { 'friction-force': '4 N', friction: '0.01' };
    axis['carried-part'] = { material: 'aluminium', temperature: '70 °C' };
    axis['supports'] = bedSupports();
    at(machine, ['axes', 'lift', 'drive'])['units'] = 3;
    return machine;
  },
  /** The lift in a box frame with panels in both directions, and a gantry beam. */
  framed: () => {
    const machine = base('lift');
    machine['frame'] = {
      box: {
        width: '400 mm', depth: '500 mm', height: '500 mm', column: '40x40-light', joint: 'corner-bracket', 'braced-x': 'panel', 'braced-y': 'panel', 'panel-material': 'steel', 'panel-thickness': '1 mm',
        'top-mass': '6 kg', mass: '30 kg', 'moving-mass': '1 kg', acceleration: '3 m/s²',
      },
      gantry: { span: '600 mm', section: '40x80-light', ends: 'supported', 'carried-mass': '2 kg', 'tool-reach': '100 mm', 'sag-tolerance': '0.1 mm' },
    };
    return machine;
  },
  /** The lift beside a portal of members: two columns welded to clamped feet, a beam that carries the tool in its middle. */
  portal: () => {
    const machine = base('lift');
    machine['frame'] = {
      profile: '40x40-heavy', joint: 'welded', tool: 'tool',
      points: {
        'foot left': { at: ['0 mm', '0 mm', '0 mm'], held: 'clamped' },
        'foot right': { at: ['600 mm', '0 mm', '0 mm'], held: 'clamped' },
        'top left': { at: ['0 mm', '0 mm', '300 mm'] },
        tool: { at: ['300 mm', '0 mm', '300 mm'], mass: '1 kg' },
        'top right': { at: ['600 mm', '0 mm', '300 mm'] },
      },
      members: { left: { from: 'foot left', to: 'top left' }, right: { from: 'foot right', to: 'top right' }, beam: { from: 'top left', to: 'top right' } },
    };
    return machine;
  },
  /** A horizontal axis on one ball screw. */
  router: () => {
    const machine = base('ball-lift');
    const axis = at(machine, ['axes', 'lift']);
    axis['direction'] = 'horizontal';
    axis['process-force'] = '0 N to 40 N';
    const drive = at(machine, ['axes', 'lift', 'drive']);
    delete drive['brake'];
    delete drive['motor-position'];
    return machine;
  },
  /** A horizontal axis on one open belt. */
  belt: () => {
    const machine = base('router');
    const axis = at(machine, ['axes', 'lift']);
    axis['travel'] = '500 mm';
    axis['process-force'] = '0 N';
    axis['motion'] = { speed: '250 mm/s', acceleration: '2 m/s²', duty: '40 %' };
    axis['drive'] = beltDrive();
    machine['masses'] = { plate: { mass: '1.5 kg' } };
    machine['supplies'] = { main: { kind: 'extra-low-voltage', voltage: '36 V', current: '10 A' } };
    machine['parts'] = { 'lift-motor': largeStepper() };
    return machine;
  },
  /** A level carriage with two ball bushings on each of two round shafts, pulled by a belt beside its middle. */
  slider: () => {
    const machine = base('belt');
    const axis = at(machine, ['axes', 'lift']);
    axis['guides'] = {
      'friction-force': '4 N', kind: 'round-shaft', bearing: 'ball-bushing', rails: 2, carriages: 2, 'rail-spacing': '120 mm', 'carriage-spacing': '80 mm', 'guided-length': '110 mm',
      'drive-offset': '30 mm', 'shaft-diameter': '16 mm', 'unsupported-length': '640 mm', 'shaft-ends': 'supported',
    };
    return machine;
  },
  /** A vertical axis on one belt behind a reduction, with a brake on the rail. */
  'belt-lift': () => {
    const machine = base('belt');
    const axis = at(machine, ['axes', 'lift']);
    axis['direction'] = 'vertical';
    axis['motion'] = { speed: '80 mm/s', acceleration: '800 mm/s²', duty: '10 %' };
    const drive = at(machine, ['axes', 'lift', 'drive']);
    drive['reduction'] = [{ kind: 'belt', 'driving-teeth': 20, 'driven-teeth': 60 }];
    drive['brake'] = { at: 'rail', 'holding-force': '120 N' };
    return machine;
  },
  /** A horizontal axis on a rack, behind a planetary gear head. */
  rack: () => {
    const machine = base('belt');
    const drive = at(machine, ['axes', 'lift', 'drive']);
    for (const key of ['belt', 'pulley', 'idlers']) delete drive[key];
    drive['reduction'] = [{ kind: 'planetary', ratio: 5, backlash: '0.1°', 'torsional-stiffness': '700 N·m/rad' }];
    drive['rack'] = { module: '1 mm', 'face-width': '12 mm', material: 'steel', 'pitch-error': '0.05 mm', preload: '40 N' };
    drive['pinion'] = { teeth: 20, bore: '8 mm', 'face-width': '12 mm', material: 'steel', overhang: '15 mm' };
    return machine;
  },
  /** Two horizontal axes driven by two motors at rest over crossed belts; `lift` is the axis on which the carriage runs. */
  crossed: () => {
    const machine = base('belt');
    machine['masses'] = { plate: { mass: '0.8 kg' }, beam: { mass: '1.4 kg' } };
    const axis = at(machine, ['axes', 'lift']);
    delete axis['drive'];
    const along = { ...structuredClone(axis), moves: ['plate', 'beam'] };
    machine['axes'] = { lift: axis, along };
    machine['layout'] = { kind: 'crossed-belts', axes: ['lift', 'along'], drive: { ...beltDrive(), belt: { ...(beltDrive()['belt'] as PlainMachine), 'path-length': '2.4 m' } }, 'path-lengths': ['2.4 m', '2.4 m'], 'path-tensions': ['80 N', '80 N'] };
    return machine;
  },
  /** A horizontal gantry on two belts with a motor each; the axis `across` rides on it. */
  gantry: () => {
    const machine = base('belt');
    machine['masses'] = { plate: { mass: '2 kg' }, carriage: { mass: '1 kg' } };
    const axis = at(machine, ['axes', 'lift']);
    axis['moves'] = ['plate', 'carriage'];
    const drive = at(machine, ['axes', 'lift', 'drive']);
    Object.assign(drive, { units: 2, motors: 'one-each', 'unit-spacing': '620 mm', carries: 'across' });
    machine['axes'] = { lift: axis, across: { direction: 'horizontal', travel: '500 mm', moves: ['carriage'], motion: { speed: '250 mm/s', acceleration: '2 m/s²', duty: '40 %' }, guides: { 'friction-force': '3 N' }, drive: beltDrive() } };
    return machine;
  },
};

const bedSupports = (): PlainMachine => ({
  'left rail': { joint: 'carriage-on-ball', at: ['-50 mm', '100 mm'] },
  'right shaft': { joint: 'fork', at: ['350 mm', '100 mm'], across: 'y' },
  'screw 1': { joint: 'nut-decoupled', at: ['0 mm', '0 mm'] },
  'screw 2': { joint: 'nut-decoupled', at: ['300 mm', '0 mm'] },
  'screw 3': { joint: 'nut-decoupled', at: ['150 mm', '300 mm'] },
});

const beltDrive = (): PlainMachine => ({
  motor: 'lift-motor',
  supply: 'main',
  'current-setting': '2.8 A',
  'current-setting-as': 'peak',
  belt: { profile: 'AT3', width: '10 mm', cord: 'steel', body: 'polyurethane', arrangement: 'loop', 'center-distance': '700 mm', 'nearest-distance': '80 mm', tension: '80 N' },
  pulley: { teeth: 20, bore: '8 mm', material: 'aluminium', wrap: '180°', overhang: '10 mm' },
  idlers: { count: 1, teeth: 20, face: 'toothed', side: 'teeth' },
});

const largeStepper = (): PlainMachine => ({
  kind: 'stepper', frame: 'NEMA 23', 'holding-torque': '1.2 N·m', 'detent-torque': '40 N·mm', current: '2.8 A',
  resistance: '0.9 Ω', inductance: '2.5 mH', 'rotor-inertia': '300 g·cm²', 'step-angle': '1.8°', 'shaft-diameter': '8 mm', 'radial-load-limit': '200 N', 'radial-load-distance': '15 mm',
});

function base(name: string): PlainMachine {
  const make = bases[name];
  if (!make) throw new Error(`No base machine is called "${name}".`);
  return make();
}

function at(machine: PlainMachine, path: readonly string[]): PlainMachine {
  return path.reduce<PlainMachine>((node, key) => (node[key] ??= {}) as PlainMachine, machine);
}

const scopePaths: Readonly<Record<string, readonly string[]>> = {
  machine: [],
  conditions: ['conditions'],
  controller: ['controller'],
  supply: ['supplies', 'main'],
  mass: ['masses', 'plate'],
  axis: ['axes', 'lift'],
  motion: ['axes', 'lift', 'motion'],
  guides: ['axes', 'lift', 'guides'],
  'carried-part': ['axes', 'lift', 'carried-part'],
  supports: ['axes', 'lift', 'supports'],
  levelling: ['axes', 'lift', 'levelling'],
  drive: ['axes', 'lift', 'drive'],
  screw: ['axes', 'lift', 'drive', 'screw'],
  'thrust-bearing': ['axes', 'lift', 'drive', 'screw', 'thrust-bearing'],
  nut: ['axes', 'lift', 'drive', 'nut'],
  coupling: ['axes', 'lift', 'drive', 'coupling'],
  belt: ['axes', 'lift', 'drive', 'belt'],
  pulley: ['axes', 'lift', 'drive', 'pulley'],
  idlers: ['axes', 'lift', 'drive', 'idlers'],
  rack: ['axes', 'lift', 'drive', 'rack'],
  pinion: ['axes', 'lift', 'drive', 'pinion'],
  layout: ['layout'],
  'layout.drive': ['layout', 'drive'],
  across: ['axes', 'across'],
  along: ['axes', 'along'],
  'carriage-mass': ['masses', 'carriage'],
  beam: ['masses', 'beam'],
  brake: ['axes', 'lift', 'drive', 'brake'],
  counterbalance: ['axes', 'lift', 'drive', 'counterbalance'],
  motor: ['parts', 'lift-motor'],
  heater: ['heating', 'bed'],
  frame: ['frame'],
  'frame-box': ['frame', 'box'],
  'frame-gantry': ['frame', 'gantry'],
};

/**
 * A base machine with some entries set: keys are inputs (`screw.size`) or whole scopes (`brake`); null takes the entry away.
 */
export function machineWith(name: string, changes: Readonly<Record<string, unknown>> = {}): PlainMachine {
  const machine = base(name);
  for (const [key, value] of Object.entries(changes)) {
    const dot = key.indexOf('.');
    const scope = scopePaths[dot < 0 ? key : key.slice(0, dot)];
    if (!scope) throw new Error(`No scope for "${key}".`);
    const holder = at(machine, dot < 0 ? scope.slice(0, -1) : scope);
    const entry = dot < 0 ? (scope.at(-1) ?? '') : key.slice(dot + 1);
    if (value === null) delete holder[entry];
    else holder[entry] = value;
  }
  return machine;
}

export const yamlOf = (machine: PlainMachine): string => stringify(machine, { lineWidth: 0 });
