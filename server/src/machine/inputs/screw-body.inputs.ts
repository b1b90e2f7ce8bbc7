import { leadAccuracyGrade } from '../../catalogue/lead-accuracy-grades.ts';
import { material, type Material } from '../../catalogue/materials.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { partStiffness } from '../../catalogue/support-stiffness.ts';
import { diametersOfBallScrew, refinedDiametersOfTrapezoidalScrew } from '../../mechanics/screw-body.ts';
import type { QuantityKind } from '../../language/quantity-kinds.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';
import { between, exactly, type InputValue } from '../values.ts';

const number = (range: { readonly low: number; readonly nominal: number; readonly high: number }, unit?: string): InputValue => ({
  type: 'number', ...between(range.low, range.nominal, range.high), ...(unit === undefined ? {} : { unit }),
});

/** One property of a material that the description names, or of the default that stands in for it. */
function property(input: string, materialInput: string, title: string, symbol: string, quantity: QuantityKind, unit: string, of: (material: Material) => HandbookRange): Fallback {
  return {
    input, title, symbol, quantity,
    handbook: (read) => {
      const name = read.choice(materialInput);
      const found = name === undefined ? undefined : material(name);
      if (!found) return undefined;
      const range = of(found);
      return { value: number(range, unit), source: `${found.title}: ${range.source}`, weak: range.weak };
    },
  };
}

/** The stiffness of a part of this kind, as a wide range. */
function usualStiffness(part: string | undefined, unit: string): ReturnType<NonNullable<Fallback['handbook']>> {
  const found = part === undefined ? undefined : partStiffness(part);
  return found && { value: number(found.stiffness, unit), source: `${found.title}: ${found.stiffness.source}`, weak: found.stiffness.weak };
}

/** The stiffness table's row for a thrust bearing design; `plain` collars are as stiff as a bearing block. */
const BEARINGS: Readonly<Record<string, string>> = {
  'angular-contact': 'bearing-block-pair',
  'ball-thrust': 'bearing-block-pair',
  'deep-groove': 'deep-groove-bearing',
  plain: 'bearing-block-pair',
};

function nutPart(read: InputReader): string | undefined {
  switch (read.choice('nut.design')) {
    case 'ball':
      return 'ball-nut';
    case 'preloaded-ball':
      return 'ball-nut-preloaded';
    case undefined:
      return undefined;
    // A sprung nut is as stiff as its fixed half while the spring keeps it closed; that it does is a check of its own.
    default: {
      const of = read.choice('nut.material');
      return of === undefined ? undefined : of === 'pom' || of === 'filled-polymer' ? 'polymer-nut' : 'bronze-nut';
    }
  }
}

const gradeOf = (read: InputReader) => {
  const grade = read.choice('screw.grade');
  return grade === undefined ? undefined : leadAccuracyGrade(grade);
};

const fromGrade = (of: (grade: NonNullable<ReturnType<typeof gradeOf>>) => InputValue | undefined): NonNullable<Fallback['handbook']> => (read) => {
  const grade = gradeOf(read);
  const value = grade && of(grade);
  return value && { value, source: grade.source, weak: grade.weak };
};

export default fallbacks(
  { input: 'screw.material', handbook: () => ({ value: { type: 'choice', text: 'steel' }, source: 'screws are of steel unless said otherwise' }) },
  property('screw.elastic-modulus', 'screw.material', "Young's modulus of the screw", 'E', 'pressure', 'GPa', (one) => one.youngsModulus),
  property('screw.shear-modulus', 'screw.material', 'Shear modulus of the screw', 'G', 'pressure', 'GPa', (one) => one.shearModulus),
  property('screw.density', 'screw.material', 'Density of the screw', 'ρ', 'density', 'kg/m³', (one) => one.density),
  property('screw.expansion', 'screw.material', 'Expansion of the screw', 'α', 'expansion', 'µm/(m·K)', (one) => one.expansion),
  property('screw.yield-strength', 'screw.material', 'Yield strength of the screw', 'R_e', 'pressure', 'MPa', (one) => one.yieldStrength),
  property('conditions.frame-expansion', 'conditions.frame-material', 'Expansion of the frame', 'α_f', 'expansion', 'µm/(m·K)', (one) => one.expansion),
  {
    input: 'screw.bending-diameter',
    title: 'Diameter that bends',
    symbol: 'd_b',
    quantity: 'length',
    // The root alone, as a cautious rule; the ridges stiffen it a little, by an estimate that has no published source.
    handbook: (read) => {
      const root = read.number('screw.root-diameter');
      if (!root) return undefined;
      const [thread, major, pitch, mean] = [read.choice('screw.thread'), read.number('screw.major-diameter'), read.number('screw.pitch'), read.number('screw.pitch-diameter')];
      let high = root.high;
      if (thread === 'ball') {
        if (major && major.nominal > root.high) high = diametersOfBallScrew(root.high, major.nominal, 'refined').bending;
      } else if (pitch && mean && mean.nominal > root.nominal + 0.06e-3 && pitch.nominal <= 2 * (mean.nominal - root.nominal)) {
        high = Math.max(high, refinedDiametersOfTrapezoidalScrew(root.nominal, mean.nominal, pitch.nominal).bending);
      }
      return { value: number({ low: root.low, nominal: root.nominal, high }, 'mm'), source: 'root diameter; high end with the ridges counted, by finite elements on rings, no published source', weak: true };
    },
  },
  {
    input: 'screw.mass-diameter',
    title: 'Diameter that weighs',
    symbol: 'd_m',
    quantity: 'length',
    handbook: (read) => {
      const [thread, root, major, mean] = [read.choice('screw.thread'), read.number('screw.root-diameter'), read.number('screw.major-diameter'), read.number('screw.pitch-diameter')];
      if (!root) return undefined;
      if (thread === 'ball') {
        if (!major || major.nominal <= root.high) return undefined;
        // Never below the diameter that bends, whichever ends meet.
        const least = Math.max(diametersOfBallScrew(root.nominal, major.nominal, 'refined').mass, diametersOfBallScrew(root.high, major.nominal, 'refined').bending);
        return { value: number({ low: least, nominal: least, high: major.nominal }, 'mm'), source: 'nominal diameter less the grooves, estimate without published source', weak: true };
      }
      if (!mean || mean.low < root.high) return undefined;
      return { value: number({ low: Math.max(root.high, mean.low - 0.06e-3), nominal: mean.nominal, high: mean.high }, 'mm'), source: 'pitch diameter; low end by finite elements on rings, no published source', weak: true };
    },
  },
  {
    input: 'screw.length',
    symbol: 'L_s',
    handbook: (read) => {
      const free = read.number('screw.unsupported-length');
      return free && {
        value: number({ low: free.low, nominal: free.nominal + 0.05, high: free.high + 0.12 }, 'mm'),
        source: 'unsupported length plus up to 120 mm for the ends; ours',
        weak: true,
      };
    },
  },
  {
    input: 'screw.unsupported-length',
    symbol: 'L',
  },
  { input: 'screw.bore-diameter', symbol: 'b', handbook: () => ({ value: number(exactly(0), 'mm'), source: 'a solid screw, since no bore is given' }) },
  {
    input: 'screw.end-supports',
    handbook: () => ({ value: { type: 'choice', text: 'supported-supported' }, source: 'one bearing at each end, the cautious reading of an ordinary screw; common practice' }),
  },
  {
    input: 'screw.bearing-radial-stiffness',
    title: 'Radial stiffness of an end bearing in its seat',
    symbol: 'k_r',
    quantity: 'stiffness',
    handbook: () => usualStiffness('bearing-radial-metal', 'N/µm'),
  },
  { input: 'screw.bearing-spacing', symbol: 's' },
  { input: 'screw.thrust-end', handbook: () => ({ value: { type: 'choice', text: 'motor' }, source: "the motor's end, where the thrust bearing usually sits" }) },
  { input: 'thrust-bearing.stiffness', symbol: 'k_b', handbook: (read) => usualStiffness(BEARINGS[read.choice('thrust-bearing.design') ?? ''], 'N/µm') },
  { input: 'nut.stiffness', symbol: 'k_n', handbook: (read) => usualStiffness(nutPart(read), 'N/µm') },
  { input: 'nut.mounting', handbook: () => ({ value: { type: 'choice', text: 'rigid' }, source: 'bolted on rigidly, the usual case and the one that passes run-out on' }) },
  {
    input: 'nut.decoupling-friction',
    title: 'Friction of the decoupling face',
    symbol: 'µ_d',
    quantity: 'ratio',
    handbook: () => ({ value: number({ low: 0.08, nominal: 0.15, high: 0.25 }), source: 'sliding faces, greased to dry; common practice, from memory', weak: true }),
  },
  {
    input: 'guides.lateral-stiffness',
    symbol: 'k_g',
    handbook: () => ({ value: number({ low: 5e6, nominal: 20e6, high: 100e6 }, 'N/µm'), source: 'small round-shaft to profile-rail guides; from memory', weak: true }),
  },
  {
    input: 'screw.run-out',
    symbol: 't_r',
    handbook: (read) =>
      read.choice('screw.grade') === 'rolled'
        ? { value: number({ low: 0.1e-3, nominal: 0.2e-3, high: 0.6e-3 }, 'mm'), source: 'rolled screws as sold, indicator reading over 300 to 500 mm; from memory', weak: true }
        : undefined,
  },
  {
    input: 'screw.grade',
    handbook: (read) => {
      const thread = read.choice('screw.thread');
      return thread === 'trapezoidal' || thread === 'acme' ? { value: { type: 'choice', text: 'rolled' }, source: 'sliding screws are rolled unless said otherwise; common practice' } : undefined;
    },
  },
  {
    input: 'screw.grade-kind',
    title: 'Kind of accuracy grade',
    handbook: fromGrade(({ values }) => ({ type: 'choice', text: values.kind })),
  },
  {
    input: 'screw.variation-per-300',
    title: 'Travel variation in 300 mm',
    symbol: 'v_300',
    quantity: 'length',
    handbook: fromGrade(({ values }) =>
      values.kind === 'per length'
        ? number({ ...values.deviationPer300, nominal: (values.deviationPer300.low + values.deviationPer300.high) / 2 }, 'µm')
        : number(exactly(values.variationPer300), 'µm'),
    ),
  },
  {
    input: 'screw.grade-bands',
    title: 'Travel deviation by useful travel',
    symbol: 'e_p',
    handbook: fromGrade(({ values }) =>
      values.kind === 'positioning' ? { type: 'table', rows: values.bands.map((band) => [band.upTo, band.meanTravel, band.variation ?? values.variationPer300]) } : undefined,
    ),
  },
);
