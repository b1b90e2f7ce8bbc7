import { percent, type Facts, type Limit } from './check.ts';

/** What the unpowered checks share: which verdict the worst end gives, what is to be said of what resists. */
export type Worst = 'drops' | 'may-creep' | 'holds';

/** The verdict at the worst end; undefined where nothing pulls on the drive or too little is known. */
export function worstVerdict(facts: Facts): Worst | undefined {
  const verdict = facts.bounds('drive.holding-verdict');
  if (!verdict) return undefined;
  // The verdict goes in steps, so that the search for its worst corner may see no slope; the factor behind it is smooth, and below 1 nothing holds.
  const factor = facts.bounds('drive.holding-factor')?.low ?? Infinity;
  if (verdict.low < 0.5 || factor < 1) return 'drops';
  return verdict.low < 1.5 || factor < 1.5 ? 'may-creep' : 'holds';
}

/** A counterbalance that is stronger than the weight, where it matters most, takes the axis up instead. */
export const runsUp = (facts: Facts): boolean => {
  const load = facts.bounds('drive.gravity-load');
  return load !== undefined && -load.low > load.high;
};

/** How the load hangs: on a thread, which may lock, or on a belt or a rack, which always run back. */
export type Transmission = 'screw' | 'belt' | 'rack';

export const transmission = (facts: Facts): Transmission => {
  const written = facts.choice('drive.transmission');
  return written === 'belt' || written === 'rack' ? written : 'screw';
};

/** What makes more travel of a turn: `a larger lead`. */
export const moreTravel = (facts: Facts): string => ({ screw: 'a larger lead', belt: 'a larger pulley', rack: 'a larger pinion' })[transmission(facts)];

/** The entry that says what the load hangs on. */
export const transmissionPlace = (facts: Facts): string => ({ screw: 'screw.size', belt: 'belt.profile', rack: 'rack.module' })[transmission(facts)];

/** `Fit a brake or counterbalance, or take a finer lead.`, as far as the drive does not have them already. */
export function holdingCure(facts: Facts): string {
  const brake = facts.isPresent('brake') ? 'a stronger brake' : 'a brake';
  const balance = facts.isPresent('counterbalance') ? '' : ' or counterbalance';
  if (runsUp(facts)) return `Lighten the counterbalance, or fit ${brake}.`;
  const hasThread = transmission(facts) === 'screw' && facts.choice('screw.thread') !== 'ball';
  return `Fit ${brake}${balance}${hasThread ? ', or take a finer lead' : ''}.`;
}

/** " Only its latch catches it." for what the description says of a catcher, or nothing. */
export function catcherWords(facts: Facts): string {
  const catcher = facts.choice('axis.catcher');
  return catcher === 'latch' ? ' Only its latch catches it.' : catcher === 'mechanical-stop' ? ' Its stop ends the fall.' : '';
}

/** A latch carries the load at every height; a stop lets it fall, but not on anyone. */
export function severityWithCatcher(facts: Facts, otherwise: Limit['severity']): Limit['severity'] {
  const catcher = facts.choice('axis.catcher');
  if (catcher === 'latch') return 'information';
  if (catcher === 'mechanical-stop') return facts.choice('axis.people-below') === 'possible' ? 'warning' : 'information';
  return otherwise;
}

/** What drives and what resists at the worst end, at one drive: torques at its screw in N·m, or forces along its belt or rack in N. */
export interface Resisting {
  readonly driving: number;
  readonly collar: number;
  readonly detent: number;
  readonly brake: number;
  readonly guides: number;
}

export function resisting(facts: Facts): Resisting {
  if (transmission(facts) !== 'screw') return resistingForces(facts);
  return {
    driving: facts.bounds('screw.run-down-torque')?.high ?? 0,
    collar: facts.bounds('drive.collar-at-rest')?.low ?? 0,
    detent: facts.bounds('motor.detent-at-screw')?.low ?? 0,
    brake: facts.bounds('drive.brake-at-screw')?.low ?? 0,
    guides: 0,
  };
}

function resistingForces(facts: Facts): Resisting {
  const load = facts.bounds('drive.gravity-load');
  const travel = facts.bounds('drive.travel-per-shaft-turn')?.nominal ?? 0;
  return {
    driving: load ? Math.max(Math.abs(load.low), Math.abs(load.high)) : 0,
    collar: 0,
    detent: travel > 0 ? ((facts.bounds('motor.detent-at-screw')?.low ?? 0) * 2 * Math.PI) / travel : 0,
    brake: facts.bounds('drive.brake-force')?.low ?? 0,
    guides: facts.bounds('drive.guide-friction-counted')?.low ?? 0,
  };
}

/** "The detent holds 87 % of it and is no brake." for whatever resists, or nothing. */
export function resistingWords(facts: Facts): string {
  const { driving, brake, collar, detent, guides } = resisting(facts);
  if (driving <= 0) return '';
  if (brake > 0) return ` The brake holds ${percent(brake / driving)} of it.`;
  if (collar > 0) return ` The thrust face holds ${percent(collar / driving)} of it.`;
  if (detent > 0) return ` The detent holds ${percent(detent / driving)} of it and is no brake.`;
  return guides > 0 ? ` Half the guide friction holds ${percent(guides / driving)} of it.` : '';
}
