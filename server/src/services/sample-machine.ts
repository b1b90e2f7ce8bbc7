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

/** The same for a belt, a gantry on two racks, and an axis that rides on another one. */
export const sampleGantry = `description-version: 1
machine: Heron cutter

supplies:
  main: { voltage: 36 V, current: 10 A }

masses:
  head: { mass: 0.8 kg }
  bridge: { mass: 4 kg }

axes:
  across:                      # on a loop of belt
    direction: horizontal
    travel: 500 mm
    moves: [head]
    motion: { speed: 200 mm/s, acceleration: 1 m/s², jerk: 20 m/s³ }
    guides: { friction-force: 3 N }
    drive:
      motor: motor-23
      supply: main
      current-setting: 2 A
      current-setting-as: peak
      belt:
        profile: curvilinear 3 mm
        width: 15 mm
        center-distance: 660 mm
        nearest-distance: 80 mm
        tension: 40 N
      pulley: { teeth: 20 }
      idlers: { count: 1, teeth: 20 }
      shaft-support: outboard  # a bearing beyond the pulley too
  along:                       # a gantry on two racks, a motor on each
    direction: horizontal
    travel: 800 mm
    moves: [head, bridge]
    motion: { speed: 100 mm/s, acceleration: 1 m/s², jerk: 20 m/s³ }
    guides: { friction-force: 8 N }
    people-below: guarded
    drive:
      units: 2
      motors: one-each
      unit-spacing: 620 mm
      carries: across          # the axis that rides on it
      motor: motor-23
      supply: main
      current-setting: 2 A
      current-setting-as: peak
      reduction: [{ kind: planetary, ratio: 3 }]
      rack: { module: 1 mm, face-width: 10 mm, material: steel }
      pinion: { teeth: 20, material: steel }

parts:
  motor-23:
    kind: stepper
    frame: NEMA 23
    holding-torque: 1.2 N·m
    current: 2.8 A
    resistance: 0.9 Ω
    inductance: 2.5 mH
    rotor-inertia: 300 g·cm²
`;

/** In place of the drives of two axes: one layout for both. */
export const sampleLayout = `layout:
  kind: crossed-belts
  axes: [across, along]        # the one on which the carriage runs, then the one that carries it
  path-lengths: [2.4 m, 2.4 m] # of the two belts
  path-tensions: [40 N, 40 N]
  drive:                       # of each of the two motors
    motor: motor-23
    supply: main
    current-setting: 2 A
    current-setting-as: peak
    belt: { profile: curvilinear 3 mm, width: 9 mm, nearest-distance: 80 mm }
    pulley: { teeth: 20, wrap: 180° }
    idlers: { count: 6, diameter: 18 mm }
    shaft-support: outboard
`;
