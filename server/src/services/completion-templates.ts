import type { Draft } from './completion-item.ts';

/** A boilerplate text with tab stops, for a place that the schema names by what it defines or by its key. */
interface Template {
  readonly label: string;
  readonly detail: string;
  /** The map in which it stands: what its names define, or `''` for the outermost one. */
  readonly within: string;
  /** A key that the template writes, so that it is not offered where that is there already. */
  readonly key?: string;
  readonly lines: readonly string[];
}

const drive = [
  'drive:',
  '  units: ${11:1}',
  '  motor: ${12:lift-motor}',
  '  screw:',
  '    size: ${13:Tr12x3}',
  '    end-supports: ${14|fixed-supported,supported-supported,fixed-free,supported-free,fixed-fixed|}',
  '    unsupported-length: ${15:340 mm}',
  '  nut: { material: ${16|bronze,brass,pom,filled-polymer,cast-iron,steel|}, lubrication: ${17|grease,oil,dry|}, length: ${18:24 mm} }',
];

const beltDrive = [
  'drive:',
  '  motor: ${12:carriage-motor}',
  '  belt:',
  '    profile: ${13|T5,T2.5,T10,AT3,AT5,AT10,MXL,XL,L,curvilinear 2 mm,curvilinear 3 mm,curvilinear 5 mm|}',
  '    width: ${14:10 mm}',
  '    cord: ${15|steel,glass,aramid,reinforced-steel|}',
  '    center-distance: ${16:640 mm}',
  '    nearest-distance: ${17:60 mm}',
  '    tension: ${18:60 N}',
  '  pulley: { teeth: ${19:20} }',
  '  idlers: { count: ${20:1}, teeth: ${21:20} }',
];

const rackDrive = [
  'drive:',
  '  motor: ${12:carriage-motor}',
  '  reduction: [{ kind: ${13|planetary,spur,belt,worm|}, ratio: ${14:5} }]',
  '  rack: { module: ${15:1 mm}, face-width: ${16:10 mm}, material: ${17|steel,hardened-steel,cast-iron,brass,pom|} }',
  '  pinion: { teeth: ${18:20}, material: ${19|steel,hardened-steel,cast-iron,brass,pom|} }',
];

const crossed = [
  'layout:',
  '  kind: crossed-belts',
  '  axes: [${1:across}, ${2:along}]',
  ...beltDrive.map((line) => `  ${line}`),
  '  path-lengths: [${22:2.4 m}, ${23:2.4 m}]',
];

const optionOf = (name: string, lines: readonly string[]): readonly string[] => [`\${10:${name}}:`, ...lines.slice(1)];

const axis = [
  '${1:lift}:',
  '  direction: ${2|vertical,horizontal|}',
  '  travel: ${3:300 mm}',
  '  moves: [${4:plate}]',
  '  motion: { speed: ${5:10 mm/s}, acceleration: ${6:200 mm/s²} }',
  ...drive.map((line) => `  ${line}`),
];

const beltAxis = [
  '${1:across}:',
  '  direction: ${2|horizontal,vertical|}',
  '  travel: ${3:500 mm}',
  '  moves: [${4:carriage}]',
  '  motion: { speed: ${5:200 mm/s}, acceleration: ${6:2 m/s²} }',
  ...beltDrive.map((line) => `  ${line}`),
];

const brushless = [
  '${21:carriage-motor}:',
  '  kind: brushless',
  '  torque-constant: ${22:0.06 N·m/A}',
  '  torque-constant-as: ${23|rms,peak|}',
  '  resistance: ${24:0.8 Ω}',
  '  inductance: ${25:1.2 mH}',
  '  continuous-torque: ${26:0.32 N·m}',
  '  peak-torque: ${27:0.95 N·m}',
  '  speed-limit: ${28:4000 rpm}',
  '  rotor-inertia: ${29:120 g·cm²}',
  '  encoder-counts: ${30:4000}',
];

const stepper = [
  '${21:lift-motor}:',
  '  kind: stepper',
  '  frame: ${22:NEMA 17}',
  '  holding-torque: ${23:0.45 N·m}',
  '  current: ${24:1.5 A}',
  '  resistance: ${25:2 Ω}',
  '  inductance: ${26:3.5 mH}',
  '  step-angle: ${27:1.8°}',
];

/** The numbers are those of an invented small lift; each is a tab stop, to be typed over. */
export const templates: readonly Template[] = [
  {
    label: 'machine with one lifting axis',
    detail: 'A whole description, ready to be typed over',
    within: '',
    key: 'machine',
    lines: [
      'description-version: 1',
      'machine: ${30:Heron}',
      '',
      'controller: { step-rate: ${31:200 kHz}, microsteps: ${32:16} }',
      '',
      'supplies:',
      '  main: { kind: extra-low-voltage, voltage: ${33:24 V}, current: ${34:10 A} }',
      '',
      'masses:',
      '  plate: { mass: ${35:4 kg} }',
      '',
      'axes:',
      ...axis.map((line) => `  ${line}`),
      '',
      'parts:',
      ...stepper.map((line) => `  ${line}`),
    ],
  },
  { label: 'axis on screws', detail: 'An axis with motion, motor, screw and nut', within: 'axis', lines: axis },
  { label: 'axis on a belt', detail: 'An axis with motion, motor, belt and pulleys', within: 'axis', lines: beltAxis },
  { label: 'drive by screws', detail: 'Motor, screw and nut of this axis', within: 'drive', key: 'drive', lines: drive },
  { label: 'drive option by screws', detail: 'A drive to compare', within: 'drive-option', lines: optionOf('screw', drive) },
  { label: 'drive by a belt', detail: 'Motor, toothed belt and pulleys of this axis', within: 'drive', key: 'drive', lines: beltDrive },
  { label: 'drive option by a belt', detail: 'A drive to compare', within: 'drive-option', lines: optionOf('belt', beltDrive) },
  { label: 'drive by a rack', detail: 'Motor, gear head, rack and pinion of this axis', within: 'drive', key: 'drive', lines: rackDrive },
  { label: 'drive option by a rack', detail: 'A drive to compare', within: 'drive-option', lines: optionOf('rack', rackDrive) },
  { label: 'two axes on crossed belts', detail: 'Two motors at rest that share the work of two axes', within: 'layout', key: 'layout', lines: crossed },
  { label: 'stepper motor', detail: 'A motor with the data that its torque over speed needs', within: 'part', lines: stepper },
  { label: 'brushless motor', detail: 'A motor with feedback, with the data that its torque over speed needs', within: 'part', lines: brushless },
  { label: 'mass', detail: 'A body that an axis moves', within: 'mass', lines: ['${1:plate}: { mass: ${2:4 kg} }'] },
  { label: 'supply', detail: 'A power supply', within: 'supply', lines: ['${1:main}: { kind: ${2|extra-low-voltage,mains|}, voltage: ${3:24 V}, current: ${4:10 A} }'] },
  { label: 'heated part', detail: 'A heated plate, nozzle or chamber', within: 'heater', lines: ['${1:bed}: { power: ${2:400 W}, supply: ${3:main}, target-temperature: ${4:70 °C} }'] },
];

/** Templates for a map, as snippets whose tab stops count from one. */
export function templateDrafts(within: string, has: (key: string) => boolean): Draft[] {
  return templates
    .filter((template) => template.within === within && (template.key === undefined || !has(template.key)))
    .map(({ label, detail, lines }) => ({ label, kind: 'template', detail, documentation: ['```yaml', ...lines.map(shown), '```'].join('\n'), insertText: countedFromOne(lines.join('\n')), isSnippet: true }));
}

function shown(line: string): string {
  return line.replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, '$1').replace(/\$\{\d+:([^}]*)\}/g, '$1');
}

/** Tab stops in the order in which they stand; the cursor ends up behind the last line. */
function countedFromOne(snippet: string): string {
  let count = 0;
  return `${snippet.replace(/\$\{\d+/g, () => `\${${(count += 1)}`)}$0`;
}
