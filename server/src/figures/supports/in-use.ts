import { massPlaceOf } from '../../machine/mass-place.ts';
import type { PlateSupport } from '../../mechanics/support-reactions.ts';
import type { Bounded } from '../../machine/values.ts';
import { formOf, supportOf } from '../../machine/support-joint.ts';
import { extremeOf, extremeRatio, supportForms, worstLoadPoint, type CommonAcceleration, type LoadExtreme, type LoadForm, type OpenMass, type WorstLoadPoint } from '../../mechanics/supports-in-use.ts';
import type { Evaluation } from '../evaluation.ts';
import { carriersOf, layoutOf, NO_SUPPORTS, platesOf, type Layout } from './layout.ts';

type Rows = readonly (readonly number[])[];

/** What the figures of supports in use read. */
export interface UseValues {
  readonly rows: Rows | undefined;
  readonly masses: Rows | undefined;
  readonly owners: readonly string[] | undefined;
  readonly massNames: readonly string[] | undefined;
  readonly end: number;
  readonly gravity: number;
  readonly inclination: number;
  readonly acceleration: number | undefined;
  readonly along: string | undefined;
}

/** An extreme, and in which case it comes about. */
export interface InUse {
  readonly value: number;
  /** "with parts at 320, 60 mm, accelerating upwards"; empty where nothing but the weight at its place brings it about. */
  readonly situation: () => string;
}

/** A support that carries weight, over all that may happen. */
export interface CarrierInUse {
  readonly index: number;
  readonly name: string;
  /** N up. */
  readonly least: InUse;
  readonly most: InUse;
}

/** What supports carry over all places, sizes and accelerations of the masses. */
export interface SupportsInUse {
  readonly layout: Layout;
  readonly carriers: readonly CarrierInUse[];
  /** Least share of a carrier in the load of the moment, or largest with 1. */
  readonly share: (carrier: number, sign: 1 | -1) => InUse | 'no load';
  /** Whether any mass may lie elsewhere, or be absent. */
  readonly open: boolean;
  /** Distance of the whole load from the edge of the supports, m. */
  readonly loadPoint: () => InUse | 'no load';
  /** What could not be reckoned with; empty where all could. */
  readonly leftOut: string;
}

/** What stands below the masses, whatever they are. */
interface Ground {
  readonly layout: Layout;
  readonly carriers: readonly number[];
  readonly plates: readonly PlateSupport[];
  readonly forms: readonly LoadForm[];
}

/** By the rows of a table and the stiffness: the same for all figures, gravities and accelerations, of which dozens are asked for at one keystroke. */
const grounds = new WeakMap<Rows, Map<number, Ground>>();

function groundOf(rows: Rows, owners: readonly string[] | undefined, end: number): Ground | undefined {
  const known = grounds.get(rows) ?? new Map<number, Ground>();
  grounds.set(rows, known);
  const found = known.get(end);
  if (found) return found;
  const layout = layoutOf(rows, owners);
  if (!layout) return undefined;
  const carriers = carriersOf(layout);
  const plates = platesOf(layout, carriers, end);
  const made = { layout, carriers, plates, forms: plates.length === 0 ? [] : supportForms(plates) };
  known.set(end, made);
  return made;
}

/** What supports carry in use, or why nobody knows. */
export function supportsInUse(values: UseValues): SupportsInUse | string {
  const ground = values.rows && groundOf(values.rows, values.owners, values.end);
  if (!ground) return NO_SUPPORTS;
  const { layout, carriers, plates, forms } = ground;
  if (!values.masses) return 'every mass that the axis moves needs its place (at)';
  if (carriers.length === 0) return 'none of the supports carries weight';
  const places = values.masses.map(massPlaceOf);
  if (!places.some(({ mass }) => mass.high > 0)) return 'nothing weighs on the supports';
  const { accelerations, leftOut } = accelerationsOf(values, places.every(({ z }) => z !== undefined));
  const push = pushHeight(layout, carriers, values.along);
  const pair = ({ low, high }: Bounded): readonly [number, number] => [low, high];
  const masses = places.map(({ mass, x, y, z }): OpenMass => ({ mass: pair(mass), x: pair(x), y: pair(y), height: z ? [z.low - push, z.high - push] : [0, 0] }));
  const common = accelerations.map(({ acceleration }) => acceleration);
  const titles = places.map(({ mass, x, y }, i) => ({ name: values.massNames?.[i] ?? `mass ${i + 1}`, absent: mass.low <= 0 && mass.high > 0, moves: x.high - x.low > ROAMS || y.high - y.low > ROAMS }));
  const heaviest = values.gravity * places.reduce((sum, { mass }) => sum + mass.high, 0);
  /** With the accelerations told only where they add more than `hair` to what masses at rest bring about. */
  const inUse = (found: LoadExtreme, atRest: () => number, hair: number): InUse => ({
    value: found.value,
    situation: () =>
      [
        ...titles.flatMap(({ name, absent, moves }, i): string[] => {
          const choice = found.masses[i];
          if (choice === undefined || (!absent && !moves)) return [];
          if (absent && choice.mass <= 0) return [`without ${name}`];
          return [moves ? `with ${name} at ${millimetres(choice.x)}, ${millimetres(choice.y)} mm` : `with ${name}`];
        }),
        found.acceleration > 0 && Math.abs(found.value - atRest()) > hair ? (accelerations[found.acceleration]?.words ?? '') : '',
      ].filter((part) => part !== '').join(', '),
  });
  const still = [REST.acceleration];
  const ratio = (found: LoadExtreme | 'no load'): number => (found === 'no load' ? 0 : found.value);
  return {
    layout,
    open: titles.some(({ absent, moves }) => absent || moves),
    carriers: carriers.map((index, i): CarrierInUse => {
      const extreme = (sign: 1 | -1): InUse => {
        const of = (motions: readonly CommonAcceleration[]): LoadExtreme => extremeOf(forms[i] as LoadForm, masses, motions, values.gravity, sign);
        return inUse(of(common), () => of(still).value, TELLING * heaviest);
      };
      return { index, name: layout.joints[index]?.owner ?? '', least: extreme(-1), most: extreme(1) };
    }),
    share: (carrier, sign) => {
      const of = (motions: readonly CommonAcceleration[]): LoadExtreme | 'no load' => extremeRatio(forms[carrier] as LoadForm, masses, motions, values.gravity, sign);
      const found = of(common);
      return found === 'no load' ? found : inUse(found, () => ratio(of(still)), TELLING);
    },
    loadPoint: () => {
      const of = (motions: readonly CommonAcceleration[]): WorstLoadPoint | 'no load' => worstLoadPoint(plates, masses, motions, values.gravity);
      const found = of(common);
      return found === 'no load' ? found : inUse(found, () => ratio(of(still)), 0.5e-3);
    },
    leftOut,
  };
}

/** Part of the load below which nobody is told what an acceleration adds. */
const TELLING = 0.02;

/** What supports carry in use with every input at its nominal value; undefined where it cannot be told. */
export function nominalUse(evaluation: Evaluation): SupportsInUse | undefined {
  const table = (id: string): { readonly rows: Rows; readonly titles?: readonly string[] } | undefined => {
    const input = evaluation.input(id);
    return input.state === 'known' && input.value.type === 'table' ? input.value : undefined;
  };
  const nominal = (id: string): number | undefined => evaluation.bounds(id)?.nominal;
  const [joints, masses] = [table('axis.support-joints'), table('axis.mass-places')];
  const [gravity, inclination, end] = [nominal('conditions.gravity'), nominal('axis.inclination'), nominal('axis.joint-stiffness-end')];
  if (gravity === undefined || inclination === undefined || end === undefined) return undefined;
  const found = supportsInUse({
    rows: joints?.rows, owners: joints?.titles, masses: masses?.rows, massNames: masses?.titles,
    end, gravity, inclination, acceleration: nominal('motion.acceleration'), along: evaluation.choice('axis.along'),
  });
  return typeof found === 'string' ? undefined : found;
}

/** The largest share of some carriers in the weight, over all places and sizes of the masses at rest; accelerations along a screw do not change it. */
export function largestShares(layout: Layout, masses: Rows, end: number, carriers: readonly number[]): readonly number[] {
  const all = carriersOf(layout);
  const forms = supportForms(platesOf(layout, all, end));
  const open = masses.map(massPlaceOf).map(({ mass, x, y }): OpenMass => ({ mass: [mass.low, mass.high], x: [x.low, x.high], y: [y.low, y.high], height: [0, 0] }));
  return carriers.flatMap((index) => {
    const form = forms[all.indexOf(index)];
    const found = form && extremeRatio(form, open, [REST.acceleration], 1, 1);
    return found === undefined || found === 'no load' ? [] : [found.value];
  });
}

/** A place that is open by no more is only uncertain, m. */
const ROAMS = 0.01;

const millimetres = (metres: number): string => `${Math.round(metres * 1000)}`;

interface Told { readonly acceleration: CommonAcceleration; readonly words: string }

const REST: Told = { acceleration: { x: 0, y: 0, z: 0 }, words: '' };

/** What the masses are accelerated with, both ways. Of an inclined axis nobody knows to which side it rises, so both are tried. */
function accelerationsOf({ acceleration, inclination, along }: UseValues, heights: boolean): { readonly accelerations: readonly Told[]; readonly leftOut: string } {
  if (acceleration === undefined) return { accelerations: [REST], leftOut: 'at rest only, since no acceleration is given' };
  const [up, sideways] = [acceleration * Math.sin(inclination), acceleration * Math.cos(inclination)].map((part) => (Math.abs(part) < 1e-9 * acceleration ? 0 : part)) as [number, number];
  const known = heights && (along === 'x' || along === 'y');
  const leftOut = sideways === 0 || known ? '' : !heights ? 'sideways acceleration left out, since heights of masses are not given' : 'sideways acceleration left out, since nobody says along what the axis goes';
  const across = known && sideways !== 0 ? [sideways, -sideways] : [0];
  const rise = up === 0 ? [0] : [up, -up];
  const accelerations = across.flatMap((level) =>
    rise.map((z): Told => {
      const words = [z === 0 ? '' : z > 0 ? 'upwards' : 'downwards', level === 0 ? '' : `towards ${level > 0 ? '+' : '−'}${along === 'x' ? 'X' : 'Y'}`].filter((part) => part !== '');
      return { acceleration: { x: along === 'x' ? level : 0, y: along === 'y' ? level : 0, z }, words: words.length === 0 ? '' : `accelerating ${words.join(' and ')}` };
    }),
  );
  return { accelerations: [REST, ...accelerations.filter(({ words }) => words !== '')], leftOut };
}

/** Height at which the axis is pushed along: that of nuts and belts that are written as supports and follow its travel, else that of the supports that carry. */
function pushHeight({ supports }: Layout, carriers: readonly number[], along: string | undefined): number {
  const side = along === 'x' ? 0 : along === 'y' ? 1 : undefined;
  const drives = supports.filter(({ kind, axis }) => side !== undefined && formOf(kind).drive === true && Math.abs(axis[side]) > 0.9 * Math.hypot(...axis));
  const heights = (drives.length > 0 ? drives : carriers.flatMap((index) => supports[index] ?? [])).map(({ at }) => at[2]);
  return heights.reduce((sum, height) => sum + height, 0) / heights.length;
}

/** Nuts whose two halves are pressed apart follow both ways. */
const WITHOUT_PLAY = new Set(['spring-loaded', 'preloaded-ball']);

/** Whether a support lets go where it would have to pull: it merely pushes, or it is a nut with play. All else holds both ways. */
export function letsGo(row: readonly number[], nutDesign: string | undefined): boolean {
  const { kind } = supportOf(row);
  return formOf(kind).oneSided === true || (kind.startsWith('nut-') && !WITHOUT_PLAY.has(nutDesign ?? ''));
}
