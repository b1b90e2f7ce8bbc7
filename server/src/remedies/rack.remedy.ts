import { gentlestCombinations, type Option } from './combinations.ts';
import { changeOf, costOfChange, entryDial, exactText, inOwnUnit, solvedProposal, turned, valueOf } from './entry-proposals.ts';
import { niceNumber } from './nice-values.ts';
import { choice, number, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';
import { isWritten, moreOrLess } from './what-moves.ts';

/** Modules that are usual for small racks, m: the first series of ISO 54. */
const MODULES = [0.5, 0.6, 0.8, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5].map((module) => module / 1000);

/** With fewer teeth a pinion of 20° is cut away at its roots by a rack (Budynas and Nisbett, section 13-7: 2/sin² 20° = 17.1). */
const LEAST_TEETH = 18;

/** Teeth of pinions that are usually sold; common practice, no published source. */
const TEETH = [12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 36, 40, 44, 48, 50, 60];

/** Materials of teeth, the weaker first. */
const STRONGER = ['pom', 'brass', 'steel', 'hardened-steel'];

const LARGEST = 2.5;

const nominal = (context: RemedyContext, input: string): number | undefined => context.before.bounds(input)?.nominal;

/** A larger module on a pinion of about the same size; it takes a rack of the same teeth, ten modules wide as such racks usually are. */
function modules(context: RemedyContext): readonly Option[] {
  const [module, teeth, rack] = ['rack.module', 'pinion.teeth', 'rack.face-width'].map((input) => nominal(context, input));
  if (module === undefined || teeth === undefined || rack === undefined) return [];
  return MODULES.filter((candidate) => candidate > module * 1.001 && candidate <= LARGEST * module).flatMap((candidate) => {
    const count = Math.max(LEAST_TEETH, Math.round((module * teeth) / candidate));
    const width = Math.max(rack, 10 * candidate);
    const [size, face] = [exactText(context, 'rack.module', candidate), exactText(context, 'rack.face-width', width)];
    if (size === undefined || face === undefined) return [];
    const changes = [
      changeOf(context, 'rack.module', size),
      ...(count === teeth ? [] : [changeOf(context, 'pinion.teeth', String(count))]),
      ...(width === rack ? [] : [changeOf(context, 'rack.face-width', face)]),
      ...(isWritten(context, 'pinion.face-width') && (nominal(context, 'pinion.face-width') ?? 0) < width ? [changeOf(context, 'pinion.face-width', face)] : []),
    ];
    const known = changes.filter((change) => change !== undefined);
    if (known.length < changes.length) return [];
    const inputs = { 'rack.module': number(candidate), 'pinion.teeth': number(count), 'rack.face-width': number(width), 'pinion.face-width': number(width) };
    return [{ inputs, changes: known, what: `Take rack and pinion of module ${size}, ${face} wide, ${count} teeth`, cost: 3.5 + costOfChange(module, candidate) }];
  });
}

/** Both as wide as the other, and wider together; no wider than five circular pitches, beyond which teeth do not bear over their whole width. */
function widerTeeth(context: RemedyContext): readonly Proposal[] {
  const [rack, pinion, module] = [nominal(context, 'rack.face-width'), nominal(context, 'pinion.face-width'), nominal(context, 'rack.module')];
  if (rack === undefined || pinion === undefined || module === undefined) return [];
  const present = Math.min(rack, pinion);
  // Book practice for the width of spur gears goes up to about 16 modules (Budynas and Nisbett, section 14-1: 3 to 5 circular pitches).
  const most = 5 * Math.PI * module;
  const share = most <= present ? undefined : context.solveAlong((part) => {
    const width = present + part * (most - present);
    return { 'rack.face-width': number(Math.max(rack, width)), 'pinion.face-width': number(Math.max(pinion, width)) };
  });
  const text = share === undefined ? undefined : inOwnUnit(context, 'rack.face-width', present + share * (most - present), 'up', true);
  if (text === undefined) return [];
  const width = valueOf('rack.face-width', text) ?? 0;
  const narrow = [['rack', rack], ['pinion', pinion]].flatMap(([part, own]) => (Number(own) < width * 0.999 && (part === 'rack' || isWritten(context, 'pinion.face-width')) ? [String(part)] : []));
  const changes = narrow.map((part) => changeOf(context, `${part}.face-width`, text)).filter((change) => change !== undefined);
  return [{ changes, what: `Take ${narrow.length === 1 && narrow[0] === 'pinion' ? 'a pinion' : 'rack and pinion'} ${text} wide` }];
}

/** Stronger materials of a part. */
function materials(context: RemedyContext, part: 'pinion' | 'rack'): readonly Option[] {
  const input = `${part}.material`;
  const present = context.before.choice(input);
  // A limit that is written belongs to the old material.
  if (present === undefined || isWritten(context, `${part}.stress-limit`)) return [];
  return STRONGER.slice(STRONGER.indexOf(present) + 1).flatMap((material, index) => {
    const change = changeOf(context, input, material);
    return change ? [{ inputs: { [input]: choice(material) }, changes: [change], what: `Take a ${part} of ${material.replace('-', ' ')}`, cost: 3 + index / 4 }] : [];
  });
}

/** Presses the pinion into the rack by a spring that the flanks do not push back. */
function springIn(context: RemedyContext): readonly Proposal[] {
  const apart = context.before.bounds('rack.separating-force')?.high;
  if (apart === undefined || (context.before.bounds('rack.preload')?.nominal ?? 0) > 0) return [];
  const newtons = niceNumber(1.3 * Math.max(apart, 10), 'up');
  const change = changeOf(context, 'rack.preload', `${newtons} N`);
  const old: readonly Change[] = ['rack.backlash'].flatMap((input) => {
    const found = context.before.input(input);
    return found.state === 'known' && (found.origin.from === 'here' || found.origin.from === 'part') ? [{ place: found.origin.place, value: null }] : [];
  });
  return change ? [{ changes: [change, ...old], what: `Spring the pinion into the rack with ${newtons} N`, price: 'more wear' }] : [];
}

/** The first of some numbers of teeth that passes. */
function otherTeeth(context: RemedyContext, counts: readonly number[], words: (teeth: number, present: number) => Pick<Proposal, 'what' | 'price'>): readonly Proposal[] {
  const present = nominal(context, 'pinion.teeth');
  const found = context.first(counts, (teeth) => ({ 'pinion.teeth': number(teeth) }));
  const change = found === undefined ? undefined : changeOf(context, 'pinion.teeth', String(found));
  return present === undefined || found === undefined || !change ? [] : [{ changes: [change], cost: 2.5 + costOfChange(present, found), ...words(found, present) }];
}

const fewer = (context: RemedyContext): readonly number[] => TEETH.filter((teeth) => teeth < (nominal(context, 'pinion.teeth') ?? 0) && teeth >= LEAST_TEETH).reverse();
const further = (context: RemedyContext): readonly number[] => {
  const present = nominal(context, 'pinion.teeth') ?? Infinity;
  return TEETH.filter((teeth) => teeth > present && teeth <= LARGEST * present);
};

export default [
  remedy({
    id: 'larger-pinion',
    summary: 'Takes a pinion with more teeth, which is not undercut, and turns more slowly.',
    cost: 2.5,
    cures: ['pinion-undercut', 'rack-tooth-overstressed', 'motor-too-fast-for-its-maker', 'motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-beyond-its-points', 'step-rate-too-high', 'motor-cannot-lift', 'motor-margin-thin'],
    propose: (context) => otherTeeth(context, further(context), (teeth, present) => ({ what: `Take a larger pinion of ${teeth} teeth`, price: `${moreOrLess(teeth / present)} torque` })),
  }),
  remedy({
    id: 'smaller-pinion',
    summary: 'Takes a pinion with fewer teeth, not so few that it is undercut: less torque, finer steps, less play of the reduction along the rack.',
    cost: 2.5,
    cures: [
      'motor-cannot-lift', 'motor-margin-thin', 'inertia-ratio-high', 'rest-current-too-low', 'resolution-not-real', 'motor-error-over-accuracy', 'drive-gives-too-much', 'counts-too-coarse', 'reduction-error-over-accuracy',
      'reduction-overloaded', 'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short', 'rack-play-over-accuracy', 'rack-error-over-accuracy', 'resonance-low', 'coupling-overloaded',
      'motor-overruns-going-down', 'layer-height-off-full-steps', 'motor-winding-too-hot', 'motor-case-hot',
    ],
    propose: (context) => otherTeeth(context, fewer(context), (teeth, present) => ({ what: `Take a smaller pinion of ${teeth} teeth`, price: `motor ${Math.round((present / teeth - 1) * 100)} % faster` })),
  }),
  remedy({ id: 'wider-teeth', summary: 'Takes rack and pinion wide enough for the force, up to five circular pitches.', cost: 3, cures: ['rack-tooth-overstressed', 'drive-gives-too-much', 'resonance-low'], propose: widerTeeth }),
  remedy({ id: 'stronger-teeth', summary: 'Takes a pinion, a rack or both of a stronger material.', cost: 3, cures: ['rack-tooth-overstressed', 'drive-gives-too-much', 'resonance-low'], propose: (context) => gentlestCombinations(context, [materials(context, 'pinion'), materials(context, 'rack')], 2).slice(0, 2) }),
  remedy({
    id: 'larger-module',
    summary: 'Takes rack and pinion with larger teeth, the pinion of about the same size, of a stronger material where that alone is not enough.',
    cost: 3.5,
    cures: ['rack-tooth-overstressed'],
    propose: (context) => {
      const larger = modules(context);
      const found = context.first(larger, ({ inputs }) => inputs);
      return found ? [found] : gentlestCombinations(context, [larger, materials(context, 'pinion'), materials(context, 'rack')], 3).slice(0, 1);
    },
  }),
  remedy({ id: 'spring-the-pinion-in', summary: 'Presses the pinion into the rack by a spring, which takes its play away.', cost: 2.5, cures: ['rack-play-over-accuracy'], propose: springIn }),
  remedy({
    id: 'stronger-spring-of-the-pinion',
    summary: 'Takes a spring that keeps the pinion in the rack against the force of the flanks.',
    cost: 1.5,
    cures: ['pinion-spring-too-weak'],
    propose: (context) => {
      const preload = nominal(context, 'rack.preload');
      return preload === undefined || preload <= 0 ? [] : solvedProposal(context, { input: 'rack.preload', towards: 20 * preload, say: (written) => `Press the pinion in with ${written}`, coarse: true, price: 'more wear', cost: 1.5 });
    },
  }),
  remedy({
    id: 'lock-the-pinion',
    summary: 'Locks the pinion in its place instead of leaving it to a spring.',
    cost: 2,
    cures: ['pinion-spring-too-weak'],
    propose: (context) => {
      const place = context.place('rack.preload');
      return place ? [{ changes: [{ place, value: null }], what: 'Lock the pinion in its place', price: 'play opens with wear', result: () => 'no flank pushes it out' }] : [];
    },
  }),
  remedy({
    id: 'less-play-in-the-rack',
    summary: 'Sets the pinion closer to the rack, as close as it does not bind.',
    cost: 1.5,
    cures: ['rack-play-over-accuracy'],
    propose: (context) => {
      const present = nominal(context, 'rack.backlash');
      // About what can be set by hand without binding where the pinion stands highest; common practice, no published source.
      return present === undefined || present <= 20e-6 ? [] : turned(context, [entryDial(context, { input: 'rack.backlash', towards: 20e-6, say: (written) => `Set the pinion to ${written} of play`, cost: 1.5 })]);
    },
  }),
  remedy({
    id: 'truer-rack',
    summary: 'Takes a rack of a better grade, with a pinion that runs truer where that alone is not enough.',
    cost: 3,
    cures: ['rack-error-over-accuracy', 'gantry-skews'],
    propose: (context) => {
      const dial = (input: string, towards: number, say: (written: string) => string) => {
        const present = nominal(context, input);
        return present === undefined || present <= towards ? undefined : entryDial(context, { input, towards, say, cost: 2.5 });
      };
      const travel = nominal(context, 'axis.travel') ?? 1;
      // Ground racks reach 0.02 mm a metre, ground pinions 5 µm; common practice, from memory.
      const [rack, pinion] = [dial('rack.pitch-error', 20e-6 * travel, (written) => `Take a rack true to ${written} over the travel`), dial('pinion.eccentricity', 5e-6, (written) => `Take a pinion true to ${written}`)];
      if (!rack) return pinion ? turned(context, [pinion]) : [];
      const alone = turned(context, [rack]);
      return alone.length > 0 || !pinion ? alone : turned(context, [rack, pinion]);
    },
  }),
];
