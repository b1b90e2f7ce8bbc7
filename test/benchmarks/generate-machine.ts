/** Machine descriptions of a given length, for benchmarks and robustness tests: many axes with screws, healthy and not, with comments between. */

/** A small generator of numbers that are the same for the same seed. Source: S. Vigna, "splitmix64", here in 32 bits as commonly published (splitmix32). */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  };
}

const head = `# A generated machine. Nothing in it is real.
description-version: 1
machine: Generated
purpose: as long as it is asked to be

controller: { step-rate: 200 kHz, microsteps: 16 }

supplies:
  main: { kind: extra-low-voltage, voltage: 24 V, current: 14 A }
`.split('\n').slice(0, -1);

type Pick = <T>(choices: readonly [T, ...T[]]) => T;
type Between = (low: number, high: number) => number;

const screwLines = (travel: number, pick: Pick, between: Between): string[] => [
  '      coupling: { form: jaw, bores: [5 mm, 8 mm] }',
  '      screw:',
  `        size: ${pick(['Tr8x8(P2)', 'Tr8x2', 'Tr10x2', 'Tr12x3', 'Tr16x4'])}`,
  `        end-supports: ${pick(['fixed-free', 'fixed-supported', 'supported-supported'])}`,
  `        unsupported-length: ${travel + between(20, 60)} mm`,
  '      nut:',
  `        material: ${pick(['bronze', 'brass', 'pom'])}`,
  `        length: ${between(12, 25)} mm`,
  '        lubrication: grease',
  `        friction: 0.12 ± 0.03`,
];

/** As many lines as of a screw. */
const beltLines = (travel: number, pick: Pick, between: Between): string[] => [
  `      current-setting: ${pick(['1', '1.2', '1.5'])} A`,
  '      belt:',
  `        profile: ${pick(['T5', 'AT3', 'AT5'])}`,
  `        width: ${pick([10, 16])} mm`,
  `        center-distance: ${travel + between(120, 200)} mm`,
  '        nearest-distance: 60 mm',
  `        tension: ${between(20, 120)} N`,
  `      pulley: { teeth: ${between(14, 30)} }`,
  '      idlers: { teeth: 20 }',
];

/** Lines of one axis and its drive, every third on a belt; index makes its names unique. */
function axisLines(index: number, random: () => number): string[] {
  const pick = <T>(choices: readonly [T, ...T[]]): T => choices[Math.floor(random() * choices.length)] ?? choices[0];
  const between = (low: number, high: number): number => Math.round(low + random() * (high - low));
  const travel = between(200, 500);
  return [
    `  axis-${index}:  # number ${index}`,
    `    direction: ${pick(['vertical', 'horizontal', '30°'])}`,
    `    travel: ${travel} mm`,
    `    moves: [carriage-${index}, load-${index}]`,
    '    motion:',
    `      speed: ${between(5, 60)} mm/s`,
    `      acceleration: ${between(100, 600)} mm/s²`,
    '    layer-height: 0.25 mm',
    `    accuracy: ${pick(['0.05', '0.1', '0.2'])} mm`,
    '    drive:',
    `      units: ${pick([1, 2, 3])}`,
    `      motor: motor-${index}`,
    '      supply: main',
    ...(index % 3 === 0 ? beltLines(travel, pick, between) : screwLines(travel, pick, between)),
  ];
}

const massLines = (index: number, random: () => number): string[] => [
  `  carriage-${index}: { mass: ${(1 + 6 * random()).toFixed(1)} kg ± 0.2 kg, at: [310 mm, 160 mm] }`,
  `  load-${index}: { mass: 0 kg to ${(0.5 + 2 * random()).toFixed(1)} kg }`,
];

const motorLines = (index: number, random: () => number): string[] => [
  `  motor-${index}:`,
  '    kind: stepper',
  '    frame: NEMA 17',
  `    holding-torque: ${(0.3 + 0.3 * random()).toFixed(2)} N·m`,
  '    current: 1.5 A',
  '    resistance: 1.8 Ω',
  '    inductance: 3.6 mH',
  '    rotor-inertia: 54 g·cm²',
  '    step-angle: 1.8°',
];

/**
 * @param lines how many lines the text shall have, at least 50; line ends not counted as lines of their own
 * @param seed another seed gives another machine of the same length
 */
export function generateMachine(lines: number, seed = 1): string {
  const random = numbersFrom(seed);
  const headings = ['', 'masses:', '', 'axes:', '', 'parts:'];
  const perAxis = massLines(0, random).length + axisLines(0, random).length + motorLines(0, random).length;
  const axes = Math.max(1, Math.floor((lines - head.length - headings.length) / perAxis));
  const of = (make: (index: number, random: () => number) => string[]): string[] => Array.from({ length: axes }, (_, i) => make(i + 1, random)).flat();
  const text = [...head, '', 'masses:', ...of(massLines), '', 'axes:', ...of(axisLines), '', 'parts:', ...of(motorLines)];
  while (text.length < lines) text.push(`# line ${text.length + 1}`);
  return `${text.join('\n')}\n`;
}
