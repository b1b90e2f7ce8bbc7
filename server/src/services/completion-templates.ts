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

const axis = [
  '${1:lift}:',
  '  direction: ${2|vertical,horizontal|}',
  '  travel: ${3:300 mm}',
  '  moves: [${4:plate}]',
  '  motion: { speed: ${5:10 mm/s}, acceleration: ${6:200 mm/s²} }',
  ...drive.map((line) => `  ${line}`),
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
  { label: 'drive by screws', detail: 'Motor, screw and nut of this axis', within: 'drive', key: 'drive', lines: drive },
  { label: 'drive option by screws', detail: 'A drive to compare', within: 'drive-option', lines: ['${10:screw}:', ...drive.slice(1)] },
  { label: 'stepper motor', detail: 'A motor with the data that its torque over speed needs', within: 'part', lines: stepper },
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
