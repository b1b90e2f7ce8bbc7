import { spansAt, type BeltTravel, type Spans } from '../../mechanics/belt-spans.ts';

/** What places the carriage on its belt. */
export const travelNeeds = { freeLength: 'belt.free-length', nearest: 'belt.nearest-distance', travel: 'axis.travel' } as const;
/** On crossed belts the carriage comes nearer and farther by the travel of the other axis too. */
export const travelOptional = { partnerTravel: 'partner.travel' } as const;

export type TravelValues = { readonly [alias in keyof typeof travelNeeds]: number } & { readonly [alias in keyof typeof travelOptional]: number | undefined };

/** How far the carriage moves along the belt. */
export const reach = ({ travel, partnerTravel = 0 }: TravelValues): number => travel + partnerTravel;

/** Why a travel cannot be on this belt; undefined where it can. */
export function impossible(values: TravelValues): string | undefined {
  if (!(values.nearest > 0)) return 'the carriage cannot be clamped right on the axis of the pulley';
  return values.nearest + reach(values) < values.freeLength ? undefined : 'the travel is longer than the belt allows';
}

export const travelOf = (values: TravelValues): BeltTravel => ({ freeLength: values.freeLength, nearest: values.nearest, travel: reach(values) });

/** The spans at the near and at the far end of the travel. */
export const spansAtEnds = (values: TravelValues): readonly [Spans, Spans] => [spansAt(values.freeLength, values.nearest), spansAt(values.freeLength, values.nearest + reach(values))];

/** Half a millimetre of belt is neither here nor there. */
export const inMillimetres = (length: number): string => `${Math.round(length * 1000)} mm`;

export const springs = { title: 'two springs that pull on the carriage from both sides', where: 'checked against a loop of springs solved as a linear system' } as const;
