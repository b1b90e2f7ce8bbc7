/**
 * An invented lifting axis, complete and mostly healthy. Its screw of 8 mm lead on 8 mm diameter stands at about 20° (tan λ = 8/(π·7) = 0.36),
 * steeper than any friction of a plain nut, so that it drops; and 8 mm in 200 full steps are 0.04 mm a step, so that a layer of 0.24 mm
 * is 6 whole ones and one of 0.25 mm is not. That is all the physics that these tests rest on.
 */
export const sample = `# Heron, a lifting table. °µØ😀
description-version: 1
machine: Heron
controller: { step-rate: 200 kHz, microsteps: 16 }
supplies:
  main: { kind: extra-low-voltage, voltage: 24 V, current: 10 A }
masses:
  plate: { mass: 4 kg }
axes:
  lift:
    direction: vertical
    travel: 300 mm
    moves: [plate]
    motion:
      speed: 10 mm/s
      acceleration: 200 mm/s²
      duty: 5 %
    layer-height: 0.24 mm
    guides: { friction-force: 4 N }
    drive:
      units: 2
      motor: lift-motor
      motor-position: above
      supply: main
      current-setting: 1.5 A
      current-setting-as: peak
      coupling: { form: bellows, bores: [5 mm, 6 mm] }
      screw:
        size: Tr8x8(P2)
        material: steel
        grade: rolled
        journal-diameter: 6 mm
        end-supports: fixed-supported
        unsupported-length: 340 mm
        thrust-bearing: { design: angular-contact }
      nut: { design: plain, material: bronze, lubrication: grease, length: 24 mm, mounting: decoupled }
parts:
  lift-motor:
    kind: stepper
    frame: NEMA 17
    holding-torque: 0.45 N·m
    detent-torque: 15 N·mm
    current: 1.5 A
    resistance: 2 Ω
    inductance: 3.5 mH
    rotor-inertia: 68 g·cm²
    step-angle: 1.8°
    shaft-diameter: 5 mm
`;

/** The same with its motor in a part list beside it. */
export const sampleWithList = sample.replace('machine: Heron\n', 'machine: Heron\nuses: [motors.parts.yaml]\n').replace(/^parts:\n[^]*$/m, '');

export const partList = `description-version: 1
parts:
  lift-motor:
    kind: stepper
    frame: NEMA 17
    holding-torque: 0.45 N·m
    detent-torque: 15 N·mm
    current: 1.5 A
    resistance: 2 Ω
    inductance: 3.5 mH
    rotor-inertia: 68 g·cm²
    step-angle: 1.8°
    shaft-diameter: 5 mm
`;
