import { describe, expect, it } from 'vitest';
import { springDragTorque } from '../../server/src/mechanics/backlash.ts';
import { playFromWear } from '../../server/src/mechanics/nut-pressure.ts';
import {
  backDrivingTorque,
  effectiveFriction,
  forwardEfficiency,
  loweringTorque,
  normalFlankAngle,
  raisingTorque,
  reverseEfficiency,
  runDownFriction,
  selfLockingFactor,
} from '../../server/src/mechanics/power-screw.ts';
import { fallAcceleration } from '../../server/src/mechanics/unpowered-holding.ts';

/**
 * The independent method: the thread flank as a surface in space. Its normal comes from differentiating the surface numerically; the contact is a
 * force along the normal plus Coulomb friction against the sliding direction; load and torque are read off the sum of the vectors. Nothing here knows
 * a friction angle, an effective friction or a normal-section angle: those are results of the product's closed forms.
 */
type Vector = readonly [number, number, number];
const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a: Vector): Vector => times(a, 1 / Math.hypot(...a));

interface Flank {
  readonly lead: number;
  readonly meanDiameter: number;
  readonly flankAngle: number;
}

/** A point of the screw's upper flank: it rises by one lead per turn and falls away outwards by the flank angle. */
function flankPoint(flank: Flank, radius: number, turn: number): Vector {
  const height = (flank.lead * turn) / (2 * Math.PI) - (radius - flank.meanDiameter / 2) * Math.tan(flank.flankAngle);
  return [radius * Math.cos(turn), radius * Math.sin(turn), height];
}

function difference(at: (x: number) => Vector, x: number, step: number): Vector {
  return times(add(at(x + step), times(at(x - step), -1)), 1 / (2 * step));
}

/** Force on the screw by the nut for a contact force of 1 N along the normal, and its moment about the axis. */
function contact(flank: Flank, friction: number, turning: 'lifts' | 'lowers', radius = flank.meanDiameter / 2): { axial: number; moment: number; normalRise: number } {
  const outward = difference((r) => flankPoint(flank, r, 0), radius, radius * 1e-5);
  const along = difference((t) => flankPoint(flank, radius, t), 0, 1e-5);
  const normal = unit(cross(outward, along));
  // The nut, carried by the upper flank, presses the screw down along the normal.
  const press = times(normal, -1);
  // Lifting, the screw's surface moves against the rise of its own thread, relative to the nut that only climbs.
  const slide = times(unit(along), turning === 'lifts' ? -1 : 1);
  const force = add(press, times(slide, -friction));
  const arm: Vector = flankPoint(flank, radius, 0);
  return { axial: -force[2], moment: cross(arm, force)[2], normalRise: normal[2] };
}

/** Torque that turns the screw steadily so that the nut rises (or comes down) under `load`; above 0 in the sense of the motion. */
function steadyTorque(flank: Flank, friction: number, load: number, turning: 'lifts' | 'lowers'): number {
  const { axial, moment } = contact(flank, friction, turning);
  const size = load / axial;
  const torqueByNut = moment * size;
  // To lift, the screw turns clockwise seen from above (right hand, nut climbing); the motor balances the nut's torque.
  return turning === 'lifts' ? torqueByNut : -torqueByNut;
}

const THREADS: readonly (Flank & { readonly name: string; readonly pitch: number })[] = [
  { name: 'Tr8x1.5', pitch: 1.5e-3, lead: 1.5e-3, meanDiameter: 7.25e-3, flankAngle: (15 * Math.PI) / 180 },
  { name: 'Tr8x2', pitch: 2e-3, lead: 2e-3, meanDiameter: 7e-3, flankAngle: (15 * Math.PI) / 180 },
  { name: 'Tr8x8(P2)', pitch: 2e-3, lead: 8e-3, meanDiameter: 7e-3, flankAngle: (15 * Math.PI) / 180 },
  { name: 'Tr20x20(P4)', pitch: 4e-3, lead: 20e-3, meanDiameter: 18e-3, flankAngle: (15 * Math.PI) / 180 },
  { name: 'square 32x8', pitch: 4e-3, lead: 8e-3, meanDiameter: 30e-3, flankAngle: 0 },
  { name: 'steep flank', pitch: 5e-3, lead: 25e-3, meanDiameter: 12e-3, flankAngle: (30 * Math.PI) / 180 },
];
const FRICTIONS = [0, 0.02, 0.08, 0.15, 0.3];
const LOAD = 130;

const closed = (flank: Flank, friction: number) => {
  const leadAngle = Math.atan(flank.lead / (Math.PI * flank.meanDiameter));
  return { load: LOAD, pitchDiameter: flank.meanDiameter, leadAngle, effectiveFriction: effectiveFriction(friction, flank.flankAngle, leadAngle) };
};

describe.each(THREADS)('forces on the flank of $name', (flank) => {
  it.each(FRICTIONS)('at friction %d: raising, lowering, efficiencies', (friction) => {
    const c = closed(flank, friction);
    const up = steadyTorque(flank, friction, LOAD, 'lifts');
    const down = steadyTorque(flank, friction, LOAD, 'lowers');
    const scale = LOAD * flank.meanDiameter;
    expect(Math.abs((raisingTorque(c) ?? NaN) - up) / scale).toBeLessThan(1e-7);
    expect(Math.abs(loweringTorque(c) - down) / scale).toBeLessThan(1e-7);
    expect(Math.abs(backDrivingTorque(c) + down) / scale).toBeLessThan(1e-7);
    const work = (LOAD * flank.lead) / (2 * Math.PI);
    expect(forwardEfficiency(c)).toBeCloseTo(work / up, 6);
    expect(reverseEfficiency(c)).toBeCloseTo(-down / work, 6);
  });

  it('runs down below one friction only, found by bisection of the force balance', () => {
    let low = 0;
    let high = 2;
    for (let i = 0; i < 60; i += 1) {
      const middle = (low + high) / 2;
      if (steadyTorque(flank, middle, LOAD, 'lowers') < 0) low = middle;
      else high = middle;
    }
    const c = closed(flank, low);
    expect(runDownFriction(flank.flankAngle, c.leadAngle)).toBeCloseTo(low, 7);
    expect(selfLockingFactor(c.effectiveFriction, c.leadAngle)).toBeCloseTo(1, 6);
  });

  it('opens play by the axial part of the normal', () => {
    const { normalRise } = contact(flank, 0, 'lifts');
    const { leadAngle } = closed(flank, 0);
    expect(playFromWear(1e-5, normalFlankAngle(flank.flankAngle, leadAngle), leadAngle)).toBeCloseTo(1e-5 / normalRise, 11);
  });

  it.each([0.08, 0.15])('drags a sprung nut at friction %d as two flanks pressed apart', (friction) => {
    const c = closed(flank, friction);
    const drag = steadyTorque(flank, friction, 50, 'lifts') + steadyTorque(flank, friction, 50, 'lowers');
    expect(springDragTorque(50, c.pitchDiameter, c.leadAngle, c.effectiveFriction)).toBeCloseTo(drag, 8);
  });
});

describe('the whole flank instead of its mean circle', () => {
  // Even wear presses each ring alike per radius; the mean circle is an idealisation, and this is how good it is.
  it.each(THREADS.slice(0, 4))('changes the raising torque of $name by less than 2 %', (flank) => {
    // The flanks touch over P/2 of radius, half of it on either side of the mean circle (ISO 2901).
    const inner = flank.meanDiameter / 2 - flank.pitch / 4;
    let axial = 0;
    let moment = 0;
    const rings = 200;
    for (let i = 0; i < rings; i += 1) {
      const radius = inner + ((i + 0.5) / rings) * (flank.pitch / 2);
      const ring = contact(flank, 0.15, 'lifts', radius);
      axial += ring.axial;
      moment += ring.moment;
    }
    const whole = (LOAD * moment) / axial;
    expect(Math.abs((raisingTorque(closed(flank, 0.15)) ?? NaN) / whole - 1)).toBeLessThan(0.02);
  });
});

describe('a load let go on a thread', () => {
  // Newton for the mass and for the rotor, with the flank force as the unknown between them; bisected on the acceleration.
  const flank = { lead: 8e-3, meanDiameter: 7e-3, flankAngle: (15 * Math.PI) / 180 };
  const mass = 5;
  const gravity = 9.80665;
  const inertia = 6e-6;

  it.each([0, 0.1, 0.15, 0.25])('falls at friction %d as the flank forces say', (friction) => {
    const { axial, moment } = contact(flank, friction, 'lowers');
    const surplus = (acceleration: number): number => {
      const size = (mass * (gravity - acceleration)) / axial;
      return moment * size - inertia * acceleration * ((2 * Math.PI) / flank.lead);
    };
    let low = 0;
    let high = gravity;
    for (let i = 0; i < 80; i += 1) {
      const middle = (low + high) / 2;
      if (surplus(middle) > 0) low = middle;
      else high = middle;
    }
    const c = closed(flank, friction);
    const acceleration = fallAcceleration({
      mass,
      pull: mass * gravity,
      lead: flank.lead,
      reverseEfficiency: reverseEfficiency(c),
      rotatingInertia: inertia,
      resistingTorque: 0,
    });
    expect(acceleration).toBeCloseTo(low, 6);
  });
});
