/** A whole small machine: the page of keys begins with it, and the README shows it. A lift on one fine screw, with a brake. */
export const sampleMachine = `description-version: 1
machine: Heron lift

supplies:
  main: { voltage: 24 V, current: 10 A }

masses:
  plate: { mass: 4 kg ± 0.2 kg }

axes:
  lift:                        # a name that you choose
    direction: vertical
    travel: 300 mm
    moves: [plate]             # names under masses
    motion: { speed: 10 mm/s, acceleration: 100 mm/s² }
    drive:
      motor: lift-motor        # a name under parts
      supply: main             # a name under supplies
      current-setting: 1.2 A
      current-setting-as: peak
      coupling: { form: jaw, bores: [5 mm, 8 mm] }
      screw:
        size: Tr8x2            # a standard size
        end-supports: fixed-supported
        unsupported-length: 340 mm
        journal-diameter: 8 mm # where the coupling grips
        thrust-bearing: { design: angular-contact }
      brake: { holding-torque: 0.2 N·m, at: motor }
      nut: { material: bronze, length: 15 mm, lubrication: grease }

parts:
  lift-motor:
    kind: stepper
    frame: NEMA 17
    holding-torque: 0.42 N·m
    current: 1.5 A
    resistance: 1.8 Ω
    inductance: 3.6 mH
`;
