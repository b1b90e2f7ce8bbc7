import { MOTOR_FLANGES, motorFlange, type MotorFlange } from '../catalogue/motor-flanges.ts';
import { allChanges, changeOf, costOfChange, inOwnUnit, scaledText, turned, valueOf, type Dial } from './entry-proposals.ts';
import { withArticle } from './nice-values.ts';
import { number, remedy, type Change, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';
import { isWritten } from './what-moves.ts';

/** Without a frame that tells how strong such motors get, no more than this many times as strong. */
const STRONGEST = 3;

/** A motor in thought: the present one, so many times as strong. */
interface Larger {
  /** Times the holding torque at which it is to be looked for: from and up to. */
  readonly from: number;
  readonly upTo: number;
  /** Each entry as a multiple of the present one, at so many times the torque; only entries that are written. */
  readonly scales: Readonly<Record<string, (times: number) => number>>;
  readonly more: 'turns' | 'current';
  readonly frame?: MotorFlange;
}

/**
 * A longer motor of the same section: flux, rotor, resistance and inductance grow with its length, at the same current. Wound for more
 * current instead, resistance and inductance fall with the current's square.
 */
function longer(upTo: number, more: 'turns' | 'current', mostCurrent: number): Larger {
  const current = (times: number): number => (more === 'current' ? Math.max(1, Math.min(times, mostCurrent)) : 1);
  const winding = (times: number): number => times / current(times) ** 2;
  return {
    from: 1,
    upTo,
    scales: {
      'motor.holding-torque': (times) => times, 'motor.detent-torque': (times) => times, 'motor.rotor-inertia': (times) => times,
      'motor.resistance': winding, 'motor.inductance': winding, 'motor.current': current, 'drive.current-setting': current,
    },
    more,
  };
}

/** Times the present rated current up to which motors of a face are usual. */
function mostCurrent(context: RemedyContext, frame: MotorFlange | undefined): number {
  const rated = context.before.bounds('motor.current')?.nominal;
  return rated === undefined || rated <= 0 ? 1 : (frame?.current[1] ?? STRONGEST * rated) / rated;
}

/** A motor of the next face: its rotor is as usual for that face and torque, the winding as for the same copper. */
function nextFace(context: RemedyContext, holding: number, frame: MotorFlange, more: 'turns' | 'current'): Larger {
  const same = longer(frame.holdingTorque[1] / holding, more, mostCurrent(context, frame));
  const rotor = context.before.bounds('motor.rotor-inertia')?.nominal;
  const [least, most] = frame.holdingTorque;
  const [light, heavy] = frame.rotorInertia;
  const inertia = (times: number): number => (rotor === undefined ? 1 : (light * (heavy / light) ** (Math.log((times * holding) / least) / Math.log(most / least))) / rotor);
  return { ...same, from: Math.max(1, least / holding), frame, scales: { ...same.scales, 'motor.rotor-inertia': inertia } };
}

/** Stronger motors in thought, the nearest kinds first. */
export function motorDials(context: RemedyContext): readonly Dial[] {
  const holding = context.before.bounds('motor.holding-torque')?.nominal;
  // Given points of torque belong to the present motor and cannot be stretched.
  if (holding === undefined || holding <= 0 || context.before.input('motor.torque-points').state === 'known') return [];
  const name = context.before.choice('motor.frame');
  const frame = name === undefined ? undefined : motorFlange(name);
  const room = frame ? frame.holdingTorque[1] / holding : STRONGEST;
  const larger = frame ? MOTOR_FLANGES.filter(({ size }) => size > frame.size && size !== 24) : [];
  const ways = (['turns', 'current'] as const).flatMap((more) => [...(room > 1.05 ? [longer(room, more, mostCurrent(context, frame))] : []), ...larger.map((face) => nextFace(context, holding, face, more))]);
  return ways.map((way) => dialOf(context, holding, way));
}

function dialOf(context: RemedyContext, holding: number, way: Larger): Dial {
  const entries = Object.entries(way.scales).filter(([input, scale]) => scale(way.upTo) !== 1 && isWritten(context, input) && context.before.bounds(input) !== undefined);
  const timesAt = (share: number): number => way.from * (way.upTo / way.from) ** share;
  const shaft = way.frame?.usualShafts[0];
  const inputsAt = (share: number): Inputs => ({
    ...Object.fromEntries(entries.map(([input, scale]) => [input, number((context.before.bounds(input)?.nominal ?? 0) * scale(timesAt(share)))])),
    ...(shaft === undefined ? {} : { 'motor.shaft-diameter': number(shaft) }),
  });
  return {
    inputs: inputsAt,
    write: (share) => {
      const torque = inOwnUnit(context, 'motor.holding-torque', holding * timesAt(share), 'up');
      const newtonMetres = torque === undefined ? undefined : valueOf('motor.holding-torque', torque);
      if (newtonMetres === undefined || torque === undefined) return undefined;
      // The torque is rounded, and all else belongs to that motor.
      const times = newtonMetres / holding;
      const texts = entries.map(([input, scale]) => [input, input === 'motor.holding-torque' ? torque : scaledText(context, input, scale(times))] as const);
      const changes = allChanges([...texts.map(([input, text]) => changeOf(context, input, text)), ...(way.frame ? faceChanges(context, way.frame) : [])]);
      const amperes = texts.find(([input]) => input === 'motor.current')?.[1];
      const current = way.more === 'current' && amperes !== undefined ? `, ${amperes}` : '';
      const cost = 3.5 + costOfChange(1, times) + (way.frame ? 1 : 0) + (way.more === 'current' ? 0.5 : 0);
      return changes && {
        inputs: { ...inputsAt(share), ...Object.fromEntries(texts.map(([input, text]) => [input, number(valueOf(input, text) ?? Number.NaN)])) },
        changes, what: `Take ${withArticle(torque)} motor${current}${way.frame ? `, size ${way.frame.size}` : ''}`, price: 'data estimated', cost,
      };
    },
  };
}

/** What else a motor with another face brings: frame, shaft, and the coupling's bore where it sits on that shaft. */
function faceChanges(context: RemedyContext, face: MotorFlange): readonly (Change | undefined)[] {
  const shaft = face.usualShafts[0];
  const [frame, bores] = [changeOf(context, 'motor.frame', `NEMA ${face.size}`), context.place('coupling.bores')];
  const written = shaft === undefined ? undefined : inOwnUnit(context, 'motor.shaft-diameter', shaft, 'up');
  const direct = context.before.bounds('drive.reduction-ratio')?.nominal === 1;
  const bored = context.before.bounds('coupling.motor-bore');
  return [
    frame,
    ...(written === undefined ? [] : [changeOf(context, 'motor.shaft-diameter', written)]),
    ...(written !== undefined && bored && bores && direct ? [{ place: { uri: bores.uri, path: [...bores.path, '0'] }, value: written }] : []),
    // What the shaft bears belongs to the motor that goes.
    ...['motor.axial-load-limit', 'motor.radial-load-limit', 'motor.radial-load-distance'].flatMap((input) => {
      const place = context.place(input);
      return place && isWritten(context, input) ? [{ place, value: null }] : [];
    }),
  ];
}

export default remedy({
  id: 'stronger-motor',
  summary: 'Takes the least strong motor that passes: a longer one, one wound for more current, or one with the next larger face. Its rotor and winding are scaled from the present motor and are an estimate, to be replaced by the sheet of the motor that is bought.',
  cost: 3.5,
  cures: ['motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'rest-current-too-low', 'motor-overruns-going-down', 'resolution-not-real', 'motor-error-over-accuracy', 'crossed-belts-diagonal-stalls'],
  propose: (context) => {
    const found: Proposal[] = [];
    for (const dial of motorDials(context)) {
      found.push(...turned(context, [dial]));
      if (found.length === 2) break;
    }
    return found;
  },
});
