/** Involute flanks of a pinion brought to touch the straight flank of a rack by search, without any gear formula. */
import { describe, expect, test } from 'vitest';
import { contactRatio, eccentricityError, playFromGap, travelPerPinionTurn, type RackMesh } from '../../server/src/mechanics/rack-pinion.ts';
import { degrees } from '../mechanics/units.ts';

interface Point { readonly x: number; readonly y: number }

/** The pinion turns clockwise about the origin; the rack lies above it, its pitch line at the height of the pitch radius, and moves to +x. */
class Flank {
  readonly radius: number;
  readonly base: number;
  readonly angle: number;
  readonly normal: Point;
  constructor(readonly mesh: RackMesh) {
    this.radius = (mesh.module * mesh.teeth) / 2;
    this.angle = mesh.pressureAngle;
    this.base = this.radius * Math.cos(this.angle);
    // Square to the flank of the rack that is pushed towards +x.
    this.normal = { x: Math.cos(this.angle), y: Math.sin(this.angle) };
  }

  /** Point of the involute that begins on the base circle at the angle `start`, unwound by `unwound` rad. */
  point(start: number, unwound: number): Point {
    const at = start + unwound;
    return { x: this.base * (Math.cos(at) + unwound * Math.sin(at)), y: this.base * (Math.sin(at) - unwound * Math.cos(at)) };
  }

  /** Where the involute reaches farthest square to the flank of the rack, found by narrowing an interval. */
  touch(start: number, from = 0, to = 2, centre: Point = { x: 0, y: 0 }): { readonly unwound: number; readonly reach: number; readonly point: Point } {
    const reach = (unwound: number): number => {
      const { x, y } = this.point(start, unwound);
      return (x + centre.x) * this.normal.x + (y + centre.y) * this.normal.y;
    };
    let [low, high] = [from, to];
    while (high - low > 1e-10) {
      const a = low + (high - low) / 3;
      const b = high - (high - low) / 3;
      if (reach(a) < reach(b)) low = a;
      else high = b;
    }
    const unwound = (low + high) / 2;
    return { unwound, reach: reach(unwound), point: this.point(start, unwound) };
  }
}

const mesh = (teeth: number, angle = 20): RackMesh => ({ module: 1, teeth, pressureAngle: degrees(angle), helixAngle: 0 });

describe.each([[18, 20], [20, 20], [30, 20], [14, 20], [40, 14.5], [16, 25]])('%i teeth, %f°', (teeth, angle) => {
  const one = mesh(teeth, angle);
  const flank = new Flank(one);

  test('contact lasts for contact ratio times the pitch', () => {
    const outside = flank.radius + 1;
    let contact = 0;
    const steps = 40000;
    const span = (6 * 2 * Math.PI) / teeth;
    for (let i = 0; i < steps; i++) {
      // Six pitches about the top: wide enough for any tooth to come and go.
      const start = Math.PI / 2 - span / 2 + (span * i) / steps;
      const { unwound, point } = flank.touch(start, 0, 2.5);
      // Square to the flank there, so truly touching and not only at the end of the search. Next to the base circle the reach is so flat that the search cannot tell less than about 1e-5.
      const touches = unwound > 1e-4 && unwound < 2.5 - 1e-4;
      if (touches && Math.hypot(point.x, point.y) <= outside && point.y >= flank.radius - 1) contact += span / steps;
    }
    expect(contact / ((2 * Math.PI) / teeth)).toBeCloseTo(contactRatio(one, 0.01), 2);
  });

  test('the rack moves by the circumference of the pitch circle a turn', () => {
    const push = (turned: number): number => flank.touch(1 - turned).reach / flank.normal.x;
    const small = 0.1;
    expect((push(small) - push(0)) * ((2 * Math.PI) / small)).toBeCloseTo(travelPerPinionTurn(one), 6);
  });

  test('a pinion off its axis moves the rack by e/cos α to either side', () => {
    const eccentricity = 0.01;
    let [least, most] = [Infinity, -Infinity];
    const pitch = (2 * Math.PI) / teeth;
    for (let i = 0; i < 720; i++) {
      const turned = (2 * Math.PI * i) / 720;
      // One tooth after the other takes over, each a pitch farther on.
      const tooth = Math.floor(turned / pitch);
      const centre = { x: eccentricity * Math.cos(turned), y: -eccentricity * Math.sin(turned) };
      const { reach } = flank.touch(1 - (turned - tooth * pitch), 0, 2, centre);
      const error = reach / flank.normal.x + tooth * Math.PI - flank.radius * turned;
      least = Math.min(least, error);
      most = Math.max(most, error);
    }
    expect((most - least) / 2).toBeCloseTo(eccentricityError(one, eccentricity), 6);
  });

  test('a gap lets both flanks stand back', () => {
    const gap = 0.02;
    const back = (): number => {
      // How far the rack moves on until its flank, lifted by the gap, touches again; the other flank is its mirror image.
      const { reach } = flank.touch(1);
      const at = (height: number): number => (reach - height * flank.normal.y) / flank.normal.x;
      return at(flank.radius) - at(flank.radius + gap);
    };
    expect(2 * back()).toBeCloseTo(playFromGap(one, gap), 9);
  });
});
