/** Invented layouts of a carried plate, lengths in m, the third axis up. Each count was made by hand before the program was run; the reasoning stands beside it. */
import type { DriveState, Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import type { Vector3 } from '../../server/src/mechanics/vector3.ts';

export interface HandCount {
  readonly name: string;
  readonly joints: readonly Joint[];
  readonly reasoning: string;
  readonly counts: Partial<Record<DriveState, { readonly wrenches: number; readonly rank: number; readonly free: readonly string[]; readonly redundant: number }>>;
}

const X: Vector3 = [1, 0, 0];
const Y: Vector3 = [0, 1, 0];
export const Z: Vector3 = [0, 0, 1];

/** Three places at 120° on a circle of 0.2 m. */
export const threePlaces: readonly Vector3[] = [90, 210, 330].map((angle): Vector3 => [0.2 * Math.cos((angle * Math.PI) / 180), 0.2 * Math.sin((angle * Math.PI) / 180), 0]);
/** Four corners of 0.4 m by 0.3 m. */
export const fourPlaces: readonly Vector3[] = [[0.2, 0.15, 0], [-0.2, 0.15, 0], [-0.2, -0.15, 0], [0.2, -0.15, 0]];
export const rails = (count: number): Joint[] => [[-0.25, 0, 0], [0.25, 0, 0]].slice(0, count).map((at, i) => ({ owner: `rail ${'AB'[i]}`, kind: 'rail-carriage', at: at as unknown as Vector3, axis: Z }));
export const screws = (kind: 'nut-rigid' | 'nut-decoupled', places: readonly Vector3[]): Joint[] => places.map((at, i) => ({ owner: `screw ${i + 1}`, kind, at, axis: Z, lead: 0.002 }));
export const shafts = (count: number): Joint[] => [[-0.25, 0.1, 0], [0.25, 0.1, 0], [0.25, -0.1, 0], [-0.25, -0.1, 0]].slice(0, count).map((at, i) => ({ owner: `shaft ${'ABCD'[i]}`, kind: 'two-bushings', at: at as unknown as Vector3, axis: Z }));
const balls = (kind: 'ball' | 'ball-on-radial-slide' | 'vee', places: readonly Vector3[]): Joint[] => places.map((at, i) => ({ owner: `ball ${i + 1}`, kind, at, axis: Z, across: at }));
const flats = (places: readonly Vector3[]): Joint[] => places.map((at, i) => ({ owner: `foot ${i + 1}`, kind: 'flat', at, axis: Z }));
const selfAligning = (owner: string, x: number): Joint[] => [0.05, -0.05].map((z) => ({ owner, kind: 'self-aligning-bushing', at: [x, 0, z], axis: Z }));
const fork: Joint = { owner: 'fork', kind: 'fork', at: [0.25, 0, 0], axis: Z, across: Y };

/** The three-screw bed that jams. */
export const jammingBed: readonly Joint[] = [...rails(2), ...screws('nut-rigid', threePlaces)];
/** Its cure: the rails hold only the place in plan and the turn, the screws the height and both tilts. */
export const exactBed: readonly Joint[] = [{ owner: 'rail A', kind: 'carriage-on-ball', at: [-0.25, 0, 0], axis: Z }, fork, ...screws('nut-decoupled', threePlaces)];

const tilts = ['tilts about X', 'tilts about Y'];
const all6 = ['tilts about X', 'tilts about Y', 'turns about Z', 'slides along X', 'slides along Y', 'slides along Z'];

export const HAND_COUNTS: readonly HandCount[] = [
  { name: 'nothing', joints: [], reasoning: 'a free body has six freedoms', counts: { 'guides alone': { wrenches: 0, rank: 0, free: all6, redundant: 0 } } },
  { name: 'one rail, one carriage', joints: rails(1), reasoning: 'the carriage holds all but the slide', counts: { 'guides alone': { wrenches: 5, rank: 5, free: ['slides along Z'], redundant: 0 } } },
  { name: 'two rails, a carriage each', joints: rails(2), reasoning: 'both hold the same five', counts: { 'guides alone': { wrenches: 10, rank: 5, free: ['slides along Z'], redundant: 5 } } },
  { name: 'two rails, two carriages each', joints: [...rails(2), ...rails(2).map((one): Joint => ({ ...one, at: [one.at[0], 0, 0.1] }))], reasoning: 'four times the same five', counts: { 'guides alone': { wrenches: 20, rank: 5, free: ['slides along Z'], redundant: 15 } } },
  // The turn left is about the shaft itself, at x = −0.25, y = 0.1; the centre of one joint is the joint.
  { name: 'one shaft, two bushings', joints: shafts(1), reasoning: 'a cylinder in a bore slides and turns', counts: { 'guides alone': { wrenches: 4, rank: 4, free: ['turns about Z', 'slides along Z'], redundant: 0 } } },
  { name: 'two shafts, two bushings each', joints: shafts(2), reasoning: 'the second shaft takes the turn; its other three repeat', counts: { 'guides alone': { wrenches: 8, rank: 5, free: ['slides along Z'], redundant: 3 } } },
  { name: 'three shafts', joints: shafts(3), reasoning: 'the third shaft adds nothing: 3 + 4', counts: { 'guides alone': { wrenches: 12, rank: 5, free: ['slides along Z'], redundant: 7 } } },
  { name: 'four shafts', joints: shafts(4), reasoning: '7 + 4', counts: { 'guides alone': { wrenches: 16, rank: 5, free: ['slides along Z'], redundant: 11 } } },
  { name: 'shaft with two self-aligning bushings, second shaft in a fork', joints: [...selfAligning('shaft A', -0.25), fork], reasoning: 'two bushings apart on the shaft hold two shifts and two tilts, the fork the turn: 4 + 1', counts: { 'guides alone': { wrenches: 5, rank: 5, free: ['slides along Z'], redundant: 0 } } },
  { name: 'two shafts with two self-aligning bushings each', joints: [...selfAligning('shaft A', -0.25), ...selfAligning('shaft B', 0.25)], reasoning: 'as two shafts: 8 − 5', counts: { 'guides alone': { wrenches: 8, rank: 5, free: ['slides along Z'], redundant: 3 } } },
  { name: 'two rigid nuts and two shafts', joints: [...shafts(2), ...screws('nut-rigid', fourPlaces.slice(0, 2))], reasoning: 'shafts 8 of which 5 count; each nut passes 4 while it runs, 5 when held; only the slide along Z is new', counts: {
    'guides alone': { wrenches: 8, rank: 5, free: ['slides along Z'], redundant: 3 },
    'drives running': { wrenches: 16, rank: 5, free: ['slides along Z'], redundant: 11 },
    'drives held': { wrenches: 18, rank: 6, free: [], redundant: 12 },
  } },
  { name: 'two decoupled nuts and two shafts', joints: [...shafts(2), ...screws('nut-decoupled', fourPlaces.slice(0, 2))], reasoning: 'each nut only lifts: 8 + 2, the second lift fights the shafts over a tilt', counts: {
    'drives running': { wrenches: 8, rank: 5, free: ['slides along Z'], redundant: 3 },
    'drives held': { wrenches: 10, rank: 6, free: [], redundant: 4 },
  } },
  { name: 'one decoupled nut and one rail', joints: [...rails(1), ...screws('nut-decoupled', [[0, 0, 0]])], reasoning: 'five of the rail and the lift', counts: { 'drives held': { wrenches: 6, rank: 6, free: [], redundant: 0 } } },
  { name: 'one rigid nut and one rail', joints: [...rails(1), ...screws('nut-rigid', [[0, 0, 0]])], reasoning: 'the nut repeats two shifts and two tilts', counts: { 'drives running': { wrenches: 9, rank: 5, free: ['slides along Z'], redundant: 4 }, 'drives held': { wrenches: 10, rank: 6, free: [], redundant: 4 } } },
  { name: 'three rigid nuts, no guide', joints: screws('nut-rigid', threePlaces), reasoning: 'running: parallel cylinders, 12 of which 5 count; held: 15 of which 6 count', counts: { 'guides alone': { wrenches: 0, rank: 0, free: all6, redundant: 0 }, 'drives running': { wrenches: 12, rank: 5, free: ['slides along Z'], redundant: 7 }, 'drives held': { wrenches: 15, rank: 6, free: [], redundant: 9 } } },
  { name: 'four rigid nuts, no guide', joints: screws('nut-rigid', fourPlaces), reasoning: 'running 16 − 5, held 20 − 6', counts: { 'drives running': { wrenches: 16, rank: 5, free: ['slides along Z'], redundant: 11 }, 'drives held': { wrenches: 20, rank: 6, free: [], redundant: 14 } } },
  { name: 'three rigid nuts and two rails', joints: jammingBed, reasoning: 'rails 10, nuts 12 running and 15 held', counts: { 'guides alone': { wrenches: 10, rank: 5, free: ['slides along Z'], redundant: 5 }, 'drives running': { wrenches: 22, rank: 5, free: ['slides along Z'], redundant: 17 }, 'drives held': { wrenches: 25, rank: 6, free: [], redundant: 19 } } },
  { name: 'three rigid nuts and two shafts', joints: [...shafts(2), ...screws('nut-rigid', threePlaces)], reasoning: '8 + 15 − 6', counts: { 'drives held': { wrenches: 23, rank: 6, free: [], redundant: 17 } } },
  { name: 'three decoupled nuts and two shafts', joints: [...shafts(2), ...screws('nut-decoupled', threePlaces)], reasoning: '8 + 3 − 6', counts: { 'drives held': { wrenches: 11, rank: 6, free: [], redundant: 5 } } },
  { name: 'three decoupled nuts, shaft with self-aligning bushings and fork', joints: [...selfAligning('shaft A', -0.25), fork, ...screws('nut-decoupled', threePlaces)], reasoning: 'the shaft holds two tilts that two of the three screws hold too: 5 + 3 − 6', counts: { 'drives held': { wrenches: 8, rank: 6, free: [], redundant: 2 } } },
  { name: 'three decoupled nuts, one carriage under a ball and a fork', joints: exactBed, reasoning: 'guides hold two shifts and the turn, screws the height and two tilts: 3 + 3', counts: {
    // With nothing but the guides the plate pitches about X through the ball and slides along Z; the tilt about Y goes through the ball as well. All joints lie at height 0.
    'guides alone': { wrenches: 3, rank: 3, free: [...tilts, 'slides along Z'], redundant: 0 },
    'drives running': { wrenches: 3, rank: 3, free: [...tilts, 'slides along Z'], redundant: 0 },
    'drives held': { wrenches: 6, rank: 6, free: [], redundant: 0 },
  } },
  { name: 'four decoupled nuts and four shafts', joints: [...shafts(4), ...screws('nut-decoupled', fourPlaces)], reasoning: '16 + 4 − 6', counts: { 'drives held': { wrenches: 20, rank: 6, free: [], redundant: 14 } } },
  { name: 'two feet', joints: flats(fourPlaces.slice(0, 2)), reasoning: 'two heights, one line to rock about', counts: { 'guides alone': { wrenches: 2, rank: 2, free: ['tilts about X', 'turns about Z', 'slides along X', 'slides along Y'], redundant: 0 } } },
  { name: 'three feet', joints: flats(threePlaces), reasoning: 'a stool stands on any floor, but slides', counts: { 'guides alone': { wrenches: 3, rank: 3, free: ['turns about Z', 'slides along X', 'slides along Y'], redundant: 0 } } },
  { name: 'four feet', joints: flats(fourPlaces), reasoning: 'a table of four legs rocks', counts: { 'guides alone': { wrenches: 4, rank: 3, free: ['turns about Z', 'slides along X', 'slides along Y'], redundant: 1 } } },
  { name: 'three balls fixed to the ground', joints: balls('ball', threePlaces), reasoning: 'three distances between the balls cannot change: 9 − 6', counts: { 'guides alone': { wrenches: 9, rank: 6, free: [], redundant: 3 } } },
  { name: 'three balls in three grooves that meet', joints: balls('vee', threePlaces), reasoning: 'the classic coupling: 3 × 2', counts: { 'guides alone': { wrenches: 6, rank: 6, free: [], redundant: 0 } } },
  { name: 'three balls on radial slides', joints: balls('ball-on-radial-slide', threePlaces), reasoning: 'the same', counts: { 'guides alone': { wrenches: 6, rank: 6, free: [], redundant: 0 } } },
  { name: 'four balls on radial slides', joints: balls('ball-on-radial-slide', fourPlaces), reasoning: '8 − 6', counts: { 'guides alone': { wrenches: 8, rank: 6, free: [], redundant: 2 } } },
  { name: 'cone, groove towards it, flat', joints: [{ owner: 'cone', kind: 'cone', at: fourPlaces[0] as Vector3, axis: Z }, { owner: 'vee', kind: 'vee', at: fourPlaces[1] as Vector3, axis: Z, across: X }, { owner: 'flat', kind: 'flat', at: fourPlaces[3] as Vector3, axis: Z }], reasoning: '3 + 2 + 1', counts: { 'guides alone': { wrenches: 6, rank: 6, free: [], redundant: 0 } } },
  { name: 'cone, groove square to the line to it, flat', joints: [{ owner: 'cone', kind: 'cone', at: fourPlaces[0] as Vector3, axis: Z }, { owner: 'vee', kind: 'vee', at: fourPlaces[1] as Vector3, axis: Z, across: Y }, { owner: 'flat', kind: 'flat', at: fourPlaces[3] as Vector3, axis: Z }], reasoning: 'the groove holds the distance to the cone twice and leaves the turn: the count says 0, the rank 1 and 1', counts: { 'guides alone': { wrenches: 6, rank: 5, free: ['turns about Z through cone'], redundant: 1 } } },
  { name: 'four bolted spacers', joints: fourPlaces.map((at, i): Joint => ({ owner: `spacer ${i + 1}`, kind: 'rigid-bolts', at, axis: Z })), reasoning: '24 − 6', counts: { 'guides alone': { wrenches: 24, rank: 6, free: [], redundant: 18 } } },
  { name: 'three upright wires and three level ones through one point', joints: [...threePlaces.map((at, i): Joint => ({ owner: `leg ${i + 1}`, kind: 'wire-flexure', at, axis: Z })), ...threePlaces.map((at, i): Joint => ({ owner: `stay ${i + 1}`, kind: 'wire-flexure', at, axis: at }))], reasoning: 'six wires, but three lines through one point hold only two shifts: it turns, and one stay too many', counts: { 'guides alone': { wrenches: 6, rank: 5, free: ['turns about Z'], redundant: 1 } } },
  { name: 'two parallel blades', joints: [-0.1, 0.1].map((x, i): Joint => ({ owner: `blade ${i + 1}`, kind: 'blade-flexure', at: [x, 0, 0], axis: X })), reasoning: 'shifts Y and Z of both give Y, Z, turn about Z, tilt about Y; both hold the tilt about X: 6 − 5', counts: { 'guides alone': { wrenches: 6, rank: 5, free: ['slides along X'], redundant: 1 } } },
  { name: 'two rails along Y and one belt beside', joints: [[-0.25, 0, 0], [0.25, 0, 0]].map((at, i): Joint => ({ owner: `rail ${'AB'[i]}`, kind: 'rail-carriage', at: at as unknown as Vector3, axis: Y })).concat([{ owner: 'belt', kind: 'belt', at: [-0.25, 0, 0], axis: Y }]), reasoning: '10 + 1 − 6; running the belt holds nothing', counts: { 'drives running': { wrenches: 10, rank: 5, free: ['slides along Y'], redundant: 5 }, 'drives held': { wrenches: 11, rank: 6, free: [], redundant: 5 } } },
  { name: 'two grooved wheels on one rail, a flat wheel on the other', joints: [-0.1, 0.1].map((y): Joint => ({ owner: 'rail A', kind: 'vee-wheel', at: [-0.25, y, 0], axis: Y, across: Z })).concat([{ owner: 'rail B', kind: 'flat-wheel', at: [0.25, 0, 0], axis: Y, across: Z }]), reasoning: 'X and Z at both grooved wheels give X, Z, turn about Z, tilt about X; the flat wheel the tilt about Y', counts: { 'guides alone': { wrenches: 5, rank: 5, free: ['slides along Y'], redundant: 0 } } },
];
