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
};

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
  drive: ['axes', 'lift', 'drive'],
  screw: ['axes', 'lift', 'drive', 'screw'],
  'thrust-bearing': ['axes', 'lift', 'drive', 'screw', 'thrust-bearing'],
  nut: ['axes', 'lift', 'drive', 'nut'],
  coupling: ['axes', 'lift', 'drive', 'coupling'],
  brake: ['axes', 'lift', 'drive', 'brake'],
  counterbalance: ['axes', 'lift', 'drive', 'counterbalance'],
  motor: ['parts', 'lift-motor'],
  heater: ['heating', 'bed'],
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
