import { coarserBelts, otherCords, widerBelts } from './belt-choice.ts';
import { changeOf, inOwnUnit, solvedProposal, switched, turned, type Dial } from './entry-proposals.ts';
import { moveDial, rampDial, speedDial } from './move-dials.ts';
import { isBall, LONGEST_NUT } from './nut.remedy.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';
import { coarserSizes, sizeChanges } from './screw-size.remedy.ts';
import { motorDials } from './stronger-motor.remedy.ts';

type Dials = readonly (Dial | undefined)[];

/** The first set of dials that leads to a cure. */
function firstTurned(context: RemedyContext, sets: readonly Dials[]): readonly Proposal[] {
  for (const dials of sets) {
    const found = turned(context, dials);
    if (found.length > 0) return found;
  }
  return [];
}

/** Larger leads, as changes to go with a gentler move. */
function largerLeads(context: RemedyContext): readonly Dial[] {
  return coarserSizes(context).slice(0, 4).flatMap(({ designation }) => {
    const changes = sizeChanges(context, designation);
    return changes ? [switched({ 'screw.size': choice(designation) }, { changes, what: `Take the larger lead of ${designation}`, cost: 3.5 })] : [];
  });
}

/** Better nuts, the gentlest first. */
function betterNuts(context: RemedyContext): readonly Dial[] {
  const diameter = context.before.bounds('screw.major-diameter')?.nominal;
  const length = diameter === undefined ? undefined : inOwnUnit(context, 'nut.length', LONGEST_NUT * diameter, 'down');
  const [grease, bronze, long] = [changeOf(context, 'nut.lubrication', 'grease'), changeOf(context, 'nut.material', 'bronze'), length === undefined ? undefined : changeOf(context, 'nut.length', length)];
  if (isBall(context) || diameter === undefined || !grease || !bronze || !long) return [];
  const greased = { 'nut.lubrication': choice('grease') };
  const metal = { ...greased, 'nut.material': choice('bronze') };
  return [
    switched(greased, { changes: [grease], what: 'Grease the nut', cost: 1.5 }),
    switched(metal, { changes: [bronze, grease], what: 'Take a greased nut of bronze', cost: 2.5 }),
    switched({ ...metal, 'nut.length': number(LONGEST_NUT * diameter) }, { changes: [bronze, grease, long], what: `Take a greased nut of bronze, ${length ?? ''} long`, cost: 3 }),
  ];
}

/** Fewer microsteps; eight still run smoothly. */
function fewerMicrosteps(context: RemedyContext): readonly Dial[] {
  const present = context.before.bounds('controller.microsteps')?.nominal ?? 1;
  return [8, 4, 2, 1].filter((count) => count < present).flatMap((count) => {
    const change = changeOf(context, 'controller.microsteps', String(count));
    return change ? [switched({ 'controller.microsteps': number(count) }, { changes: [change], what: `Send ${count} ${count === 1 ? 'microstep' : 'microsteps'} to the full step`, cost: 1 })] : [];
  });
}

/** Wishes that can be taken back, and what a person calls them. */
const WISHES: Readonly<Record<string, { readonly input: string; readonly words: string; readonly price: string; readonly smaller?: boolean }>> = {
  'ball-nut-life-short': { input: 'axis.life', words: 'of life', price: 'an earlier new nut', smaller: true },
  'resolution-not-real': { input: 'axis.resolution', words: 'of resolution', price: 'a coarser axis' },
  'counts-too-coarse': { input: 'axis.resolution', words: 'of resolution', price: 'a coarser axis' },
};
const ACCURACY = { input: 'axis.accuracy', words: 'of accuracy', price: 'a coarser axis' } as const;

/** More than this many times less is another machine. */
const LEAST = 10;

export default [
  remedy({
    id: 'gentler-move',
    summary: 'Lowers speed and acceleration by the same share, with a larger lead or a stronger motor where it takes one.',
    cost: 2,
    lastResort: true,
    cures: ['motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'supply-voltage-rises', 'supply-current-exceeded', 'motor-too-fast-to-estimate', 'motor-past-its-corner', 'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short'],
    propose: (context) => {
      const move = moveDial(context);
      const motors = motorDials(context);
      return firstTurned(context, [[move], ...motors.map((motor) => [motor, speedDial(context)]), ...largerLeads(context).map((lead) => [lead, move]), ...motors.map((motor) => [motor, move])]);
    },
  }),
  remedy({
    id: 'slower-with-a-better-nut',
    summary: 'Takes a greased metal nut and lowers the speed.',
    cost: 3,
    lastResort: true,
    cures: ['nut-overheats', 'nut-overpressed-in-motion'],
    propose: (context) => firstTurned(context, betterNuts(context).map((nut) => [speedDial(context), nut])),
  }),
  remedy({
    id: 'slower-with-fewer-microsteps',
    summary: 'Sends fewer microsteps and lowers the speed.',
    cost: 2,
    lastResort: true,
    cures: ['step-rate-too-high'],
    propose: (context) => firstTurned(context, fewerMicrosteps(context).map((microsteps) => [speedDial(context), microsteps])),
  }),
  remedy({
    id: 'slower-with-a-larger-lead',
    summary: 'Takes a larger lead and lowers the speed.',
    cost: 4,
    lastResort: true,
    cures: ['ball-nut-too-fast', 'screw-too-fast-for-its-maker', 'screw-whirls', 'ball-nut-life-short', 'step-rate-too-high'],
    propose: (context) => firstTurned(context, largerLeads(context).map((lead) => [lead, speedDial(context)])),
  }),
  remedy({
    id: 'gentler-with-a-stiffer-belt',
    summary: 'Takes a stiffer belt and eases the ramp.',
    cost: 3.5,
    lastResort: true,
    cures: ['drive-gives-too-much', 'resonance-low'],
    propose: (context) => firstTurned(context, [...widerBelts(context), ...otherCords(context), ...coarserBelts(context)].map((belt) => [switched(belt.inputs, belt), rampDial(context)])),
  }),
  remedy({
    id: 'ask-for-less',
    summary: 'Asks for no more accuracy, resolution or life than this drive has: what can honestly be counted on. It takes back the wish and leaves the drive as it is.',
    cost: 6,
    lastResort: true,
    cures: [
      'position-error-over-accuracy', 'travel-needs-calibration', 'drive-gives-too-much', 'nut-play-too-large', 'motor-error-over-accuracy', 'run-out-reaches-load', 'nut-wears-out', 'resolution-not-real', 'ball-nut-life-short',
      'belt-error-over-accuracy', 'rack-error-over-accuracy', 'rack-play-over-accuracy', 'reduction-error-over-accuracy', 'gantry-skews', 'resonance-low', 'counts-too-coarse',
    ],
    propose: (context) => {
      const { input, words, price, smaller } = { smaller: false, ...(WISHES[context.finding.check] ?? ACCURACY) };
      const wanted = context.before.bounds(input)?.nominal;
      return wanted === undefined ? [] : solvedProposal(context, { input, towards: smaller ? wanted / LEAST : wanted * LEAST, say: (written) => `Ask for no more than ${written} ${words}`, price });
    },
  }),
];

