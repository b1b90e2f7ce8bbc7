// Small descriptions for the journeys, all invented, and a way to name places in them.

/** A lift that holds, with a motor from its own parts. */
export const healthyLift = `# Heron, a small lift. Invented.
description-version: 1
machine: Heron

controller: { step-rate: 200 kHz, microsteps: 16 }
supplies:
  main: { voltage: 24 V, current: 5 A }

masses:
  plate: { mass: 2.4 kg ± 0.1 kg }   # weighed

axes:
  lift:
    direction: vertical
    travel: 200 mm
    moves: [plate]
    motion: { speed: 5 mm/s, acceleration: 100 mm/s² }
    drive:
      units: 2
      motor: lift-motor
      supply: main
      current-setting: 1.2 A
      current-setting-as: peak
      screw: { size: Tr12x2, end-supports: fixed-supported, unsupported-length: 240 mm, thrust-bearing: { design: angular-contact } }
      nut: { material: bronze, lubrication: grease, length: 24 mm }
`;

export const liftMotor = `  lift-motor:
    kind: stepper
    frame: NEMA 17
    holding-torque: 0.42 N·m
    current: 1.5 A
    resistance: 1.8 Ω
    inductance: 3.6 mH
    rotor-inertia: 54 g·cm²
    step-angle: 1.8°
`;

/**
 * @param {string} text
 * @param {string} wanted a text that stands in it once, or at first
 * @returns {[line: number, column: number]} counted from 1
 */
export function placeIn(text, wanted) {
  const at = text.indexOf(wanted);
  if (at < 0) throw new Error(`"${wanted}" is not in the fixture`);
  const before = text.slice(0, at).split('\n');
  return [before.length, before.at(-1).length + 1];
}

/** The comments of a text, in their order. */
export const commentsOf = (text) => text.split('\n').flatMap((line) => /(?:^|\s)(#.*)$/.exec(line)?.[1] ?? []);
