import { guideKind } from '../../catalogue/guide-kinds.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { plainBushing, type PlainBushing } from '../../catalogue/plain-bushings.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';
import { between } from '../values.ts';

/** A value of the plain bushing that runs on the shafts. */
const ofBushing = (unit: string, pick: (bushing: PlainBushing) => HandbookRange): NonNullable<Fallback['handbook']> => (read) => {
  const bushing = plainBushing(read.choice('guides.bearing') ?? '');
  if (!bushing) return undefined;
  const { low, nominal, high, source, weak } = pick(bushing);
  return { value: { type: 'number', ...between(low, nominal, high), unit }, source: `${bushing.title}: ${source}`, weak };
};

const ROUND = new Set(['round-shaft', 'supported-shaft']);

/** Angle that the bearing bears. A range that begins at nothing would tell that no bushing bears anything: half of the usual value is the low end then. */
function tiltLimit(read: InputReader): ReturnType<NonNullable<Fallback['handbook']>> {
  const row = ROUND.has(read.choice('guides.kind') ?? '') ? guideKind(read.choice('guides.bearing') ?? '') : undefined;
  if (!row) return undefined;
  const { low, nominal, high, source, weak } = row.misalignment;
  return { value: { type: 'number', ...between(Math.max(low, nominal / 2), nominal, high), unit: '°' }, source: `${row.title}: ${source}`, weak };
}

export default fallbacks(
  { input: 'guides.pressure-limit', symbol: 'p_0', handbook: ofBushing('MPa', ({ pressure }) => pressure) },
  { input: 'guides.heat-limit', symbol: 'PV_0', handbook: ofBushing('MPa·m/s', ({ pressureVelocity }) => pressureVelocity) },
  { input: 'guides.sliding-speed-limit', symbol: 'v_0', handbook: ofBushing('m/s', ({ speed }) => speed) },
  { input: 'guides.specific-wear', symbol: 'k_w', handbook: ofBushing('mm³/(N·m)', ({ specificWear }) => specificWear) },
  { input: 'guides.wear-allowed', symbol: 'h_0', handbook: ofBushing('mm', ({ wearAllowed }) => wearAllowed) },
  { input: 'guides.tilt-limit', symbol: 'θ_0', handbook: tiltLimit },
);
