import type { RackMesh } from '../../mechanics/rack-pinion.ts';
import { unable } from '../figure.ts';

/** Entries that shape the teeth of rack and pinion. */
export const meshNeeds = { module: 'rack.module', teeth: 'pinion.teeth', pressureAngle: 'rack.pressure-angle', helixAngle: 'rack.helix-angle' } as const;

type MeshValues = { readonly [alias in keyof typeof meshNeeds]: number };

/** Whether teeth of these numbers can exist; the mechanics refuses the others. */
export const canMesh = ({ module, teeth, pressureAngle, helixAngle }: MeshValues): boolean =>
  module > 0 && Number.isInteger(teeth) && teeth >= 5 && pressureAngle >= (14.5 * Math.PI) / 180 - 1e-9 && pressureAngle < Math.PI / 4 && helixAngle >= 0 && helixAngle < Math.PI / 4;

export const cannotMesh = unable('teeth like these do not mesh: it takes a module, 5 teeth or more, a pressure angle from 14.5° and angles below 45°');

export const meshOf = ({ module, teeth, pressureAngle, helixAngle }: MeshValues): RackMesh => ({ module, teeth, pressureAngle, helixAngle });

export const gearBook = { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design' } as const;
