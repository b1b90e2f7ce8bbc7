import { beltAxisLag, beltAxisModes, softestAndStiffest, type BeltAxis } from '../../mechanics/belt-axis-modes.ts';
import { impossible, reach, travelNeeds, travelOptional } from '../belt/path.ts';
import { shaftsPerMotor } from '../motor/train.ts';

/** What the swing of a carriage on a belt with its motor rests on. */
export const beltAxisNeeds = {
  ...travelNeeds, specific: 'belt.specific-stiffness', mass: 'axis.moved-mass', share: 'drive.load-share', perTurn: 'drive.travel-per-shaft-turn', wheel: 'pulley.rotational-inertia',
} as const;

export const beltAxisOptions = {
  center: 'belt.center-distance', idlers: 'idlers.count', idlerInertia: 'idlers.rotational-inertia', idlerDiameter: 'idlers.diameter', linear: 'belt.mass-per-length',
  counterweight: 'counterbalance.mass', reduction: 'drive.reduction-stiffness', ratio: 'drive.reduction-ratio', wheels: 'drive.reduction-inertia',
  twist: 'coupling.torsional-stiffness', couplingInertia: 'coupling.rotational-inertia', magnetic: 'motor.magnetic-stiffness', rotor: 'motor.rotor-inertia', units: 'drive.units',
  ...travelOptional,
} as const;

export const beltAxisChoices = { arrangement: 'belt.arrangement' } as const;
export const beltAxisMaybe = { motors: 'drive.motors', reduced: 'drive.has-reduction' } as const;

type Values = { readonly [alias in keyof typeof beltAxisNeeds]: number } & { readonly [alias in keyof typeof beltAxisOptions]: number | undefined } & {
  readonly arrangement: string;
} & { readonly [alias in keyof typeof beltAxisMaybe]: string | undefined };

/** One belt with its motor and its share of the mass, and the positions that its carriage takes; a string says why there is none. */
export interface BeltAxisInUse {
  readonly axis: BeltAxis;
  readonly from: number;
  readonly to: number;
  readonly softest: number;
  readonly stiffest: number;
  /** Whether the magnetic spring of a stepping motor is in it. */
  readonly isMagnetic: boolean;
  /** What is taken as rigid since nothing is known of it. */
  readonly without: readonly string[];
}

export function beltAxisOf(values: Values): BeltAxisInUse | string {
  const { freeLength, specific, nearest, mass, share, perTurn, wheel, center, linear, counterweight = 0, reduction, twist, ratio = 1, wheels = 0, magnetic, rotor = 0, units = 1 } = values;
  const radius = perTurn / (2 * Math.PI);
  const arrangement = values.arrangement === 'anchored-ends' ? 'anchored-ends' : 'loop';
  const reason = impossible(values);
  if (reason !== undefined) return reason;
  const to = nearest + reach(values);
  const isBesideIdler = arrangement === 'loop' && center !== undefined && values.partnerTravel === undefined;
  if (isBesideIdler && !(to < center)) return 'the travel reaches beyond the idler';

  const shafts = shaftsPerMotor(values.motors, units);
  const twists = [...(reduction === undefined ? [] : [reduction / shafts]), ...(twist === undefined ? [] : [twist])];
  const axis: BeltAxis = {
    arrangement, specificStiffness: specific, freeLength, carriageMass: (mass + counterweight) * share, pulleyRadius: radius, ratio,
    pulleyInertia: wheel + (values.couplingInertia ?? 0),
    idlerMasses: idlersOf(values),
    rotorInertia: (rotor + wheels) / shafts,
    hold: magnetic === undefined ? { kind: 'clamped' } : { kind: 'magnetic', stiffness: magnetic / shafts },
    ...(isBesideIdler ? { centerDistance: center } : {}),
    ...(linear === undefined ? {} : { massPerLength: linear }),
    ...(twists.length === 0 ? {} : { reductionStiffness: 1 / twists.reduce((sum, stiffness) => sum + 1 / stiffness, 0) }),
  };
  const without = values.reduced === 'yes' && reduction === undefined ? ['the reduction'] : [];
  return { axis, from: nearest, to, ...softestAndStiffest(freeLength, nearest, to), isMagnetic: magnetic !== undefined, without };
}

function idlersOf({ idlers, idlerInertia, idlerDiameter }: Values): readonly number[] {
  if (idlers === undefined || idlerInertia === undefined || idlerDiameter === undefined || !(idlerDiameter > 0)) return [];
  return Array.from({ length: Math.round(idlers) }, () => idlerInertia / (idlerDiameter / 2) ** 2);
}

/** Lowest frequency with the carriage at a position, Hz; NaN where it cannot stand. */
export function lowestAt({ axis }: BeltAxisInUse, position: number): number {
  if (!(position > 0 && position < axis.freeLength)) return Number.NaN;
  const mode = beltAxisModes(axis, position, 1).modes[0];
  return mode ? mode.angularFrequency / (2 * Math.PI) : Number.NaN;
}

/** Lag of the carriage for each m/s² at a position, m. */
export const lagAt = ({ axis }: BeltAxisInUse, position: number): number => beltAxisLag(axis, position);

/** In words, for the remark of a figure: where, and what gives. */
export function describedAt(inUse: BeltAxisInUse, position: number): string {
  const { axis, from, to, without } = inUse;
  const mode = beltAxisModes(axis, position, 1).modes[0];
  if (!mode) return '';
  const groups = new Map<string, number>();
  for (const [name, share] of Object.entries(mode.giveShares)) {
    const group = name.includes('magnetic') ? 'magnetic spring' : name === 'reduction' ? 'reduction' : 'belt';
    groups.set(group, (groups.get(group) ?? 0) + share);
  }
  const shares = [...groups].sort((a, b) => b[1] - a[1]).map(([name, share]) => `${name} ${(share * 100).toFixed(0)} %`).join(', ');
  const place = position === from ? 'near end' : position === to ? 'far end' : 'middle of the belt';
  return `lowest at the ${place}; of the give: ${shares}${without.length === 0 ? '' : `; ${without.join(' and ')} taken as rigid, since its stiffness is not known`}`;
}
