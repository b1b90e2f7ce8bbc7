/**
 * The hazard sentences: fixed wording, in one place, never put together from pieces and never silenced by uncertainty.
 * They name the hazard in the trade's usual words and defer to the local code and to licensed practice.
 */
export const cautions = {
  'gravity-load':
    'Gravity-loaded axis: a load that is not held mechanically can fall when power is lost. Support it before working beneath it, and follow the local machinery code for holding devices.',
  'pinch-point': 'Pinch point: keep hands clear of moving axes; guard the reach to them as the local machinery code requires.',
  'hot-surface': 'Hot surface: parts above about 60 °C burn on touch. Guard or mark them, and do not leave heaters unattended.',
  'mains-voltage':
    'Mains voltage: wiring, protective earth, fusing and disconnection are work for a licensed person, to the local electrical code.',
  'stored-energy': 'Stored energy: springs, counterweights and charged supplies can move parts after power is off. Release or block them first.',
} as const;

export type CautionId = keyof typeof cautions;
