import { fastSideTorque } from '../../mechanics/reduction.ts';
import type { Source } from '../figure.ts';

/** The reduction as one stage, and what turns with each of its ends. */
export const trainNeeds = {
  ratio: 'drive.reduction-ratio',
  efficiency: 'drive.reduction-efficiency',
  reverseEfficiency: 'drive.reduction-reverse-efficiency',
} as const;

export type TrainValues = { readonly [alias in keyof typeof trainNeeds]: number };

export const powerBalance: Source = {
  title: 'power balance of each element (Dubey, Fundamentals of Electrical Drives)',
  where: 'section 2.3; checked against the examples 2.1 there and 3.4, 3.13 of Khurmi and Gupta, Theory of Machines',
};

/** How many shafts, each with its screw, pulley or pinion, one motor turns. */
export const shaftsPerMotor = (motors: string | undefined, units: number): number => (motors === 'shared' ? units : 1);

/** Torque at the motor for a torque at the shafts that it turns, both positive in the direction up. Rotor not included. */
export function atMotor(values: TrainValues, shaftTorque: number, direction: 1 | 0 | -1): number {
  const { ratio, efficiency, reverseEfficiency } = values;
  return fastSideTorque({ ratio, efficiency, reverseEfficiency, fastInertia: 0, slowInertia: 0, backlash: 0 }, shaftTorque, direction);
}
