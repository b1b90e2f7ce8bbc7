import { readQuantity } from '../../language/read-quantity.ts';
import { fallbacks, type InputReader, type ListReader, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import { sumOf, type Bounded } from '../values.ts';

type Lie = 'level' | 'upright' | undefined;

/** Within this of level or upright an axis counts as such, rad. */
const NEARLY = 0.01;

function lieOf(axis: Member): Lie {
  const direction = axis.choice('direction');
  if (direction === 'vertical') return 'upright';
  if (direction === 'horizontal') return 'level';
  const angle = direction === undefined ? undefined : readQuantity(direction, 'angle');
  if (angle?.ok !== true) return undefined;
  const { nominal } = angle.quantity;
  return Math.abs(nominal) < NEARLY ? 'level' : Math.abs(Math.abs(nominal) - Math.PI / 2) < NEARLY ? 'upright' : undefined;
}

/** Axes are only looked at where there is a frame that they could shake. */
const hasFrame = (read: InputReader): boolean => ['frame.box', 'frame.gantry', 'frame.members'].some(read.isWritten);

const axesThatLie = (lie: Lie, read: InputReader, lists: ListReader): readonly Member[] => (hasFrame(read) ? (lists.entries('machine.axes') ?? []).filter((axis) => lieOf(axis) === lie) : []);

const originAt = (member: Member, key: string): { title: string; origin: Origin } => ({ title: `${member.title}, ${key}`, origin: { from: 'here', place: { uri: member.place.uri, path: [...member.place.path, key] } } });

interface Thrown {
  readonly axis: Member;
  readonly acceleration: Bounded;
  readonly masses: readonly Member[];
  /** Undefined where the axis moves nothing that can be read. */
  readonly mass: Bounded | undefined;
}

function thrownBy(axis: Member): readonly Thrown[] {
  const acceleration = axis.within('motion')?.number('acceleration');
  if (!acceleration) return [];
  const masses = axis.named('moves', 'masses') ?? [];
  const known = masses.flatMap((mass) => mass.number('mass') ?? []);
  return [{ axis, acceleration, masses, mass: known.length > 0 && known.length === masses.length ? sumOf(known) : undefined }];
}

/** What the level axis throws about that pushes hardest; the fastest one where no mass is known. */
function hardest(read: InputReader, lists: ListReader): Thrown | undefined {
  const all = axesThatLie('level', read, lists).flatMap(thrownBy);
  const weighed = all.filter(({ mass }) => mass !== undefined);
  const push = ({ acceleration, mass }: Thrown): number => acceleration.high * (mass?.high ?? 1);
  return (weighed.length > 0 ? weighed : all).reduce<Thrown | undefined>((most, one) => (most === undefined || push(one) > push(most) ? one : most), undefined);
}

function smallestAccuracy(lie: Lie, read: InputReader, lists: ListReader): { readonly axis: Member; readonly accuracy: Bounded } | undefined {
  const all = axesThatLie(lie, read, lists).flatMap((axis) => {
    const accuracy = axis.number('accuracy');
    return accuracy ? [{ axis, accuracy }] : [];
  });
  return all.reduce<(typeof all)[number] | undefined>((least, one) => (least === undefined || one.accuracy.low < least.accuracy.low ? one : least), undefined);
}

const asFrame = (entry: 'acceleration' | 'moving-mass', unit: string) => ({
  input: `frame-box.${entry}`,
  compose: (read: InputReader) => {
    const [value, origin] = [read.number(`frame.${entry}`), read.origin(`frame.${entry}`)];
    return value && origin ? { value: { type: 'number' as const, ...value, unit }, origin } : undefined;
  },
});

export default fallbacks(
  {
    input: 'frame.acceleration',
    symbol: 'a_f',
    compose: (read, lists) => {
      const found = hardest(read, lists);
      return found && { value: { type: 'number', ...found.acceleration, unit: 'm/s²' }, origin: { from: 'several', parts: [originAt(found.axis, 'motion')] } };
    },
  },
  {
    input: 'frame.moving-mass',
    symbol: 'm_f',
    compose: (read, lists) => {
      const found = hardest(read, lists);
      if (found?.mass === undefined) return undefined;
      return { value: { type: 'number', ...found.mass, unit: 'kg' }, origin: { from: 'several', parts: [originAt(found.axis, 'moves'), ...found.masses.map((mass) => originAt(mass, 'mass'))] } };
    },
  },
  {
    input: 'frame.tolerance',
    symbol: 'x_tol',
    compose: (read, lists) => {
      const found = smallestAccuracy('level', read, lists);
      return found && { value: { type: 'number', ...found.accuracy, unit: 'mm' }, origin: { from: 'several', parts: [originAt(found.axis, 'accuracy')] } };
    },
  },
  {
    input: 'frame.pushed-along',
    title: 'Directions in which level axes push',
    symbol: '',
    compose: (read, lists) => {
      const axes = axesThatLie('level', read, lists);
      const ways = new Set(axes.map((axis) => axis.choice('along') ?? 'both'));
      const [only] = ways;
      return { value: { type: 'choice', text: ways.size === 1 && (only === 'x' || only === 'y') ? only : 'both' }, origin: { from: 'several', parts: axes.map((axis) => originAt(axis, 'along')) } };
    },
  },
  {
    input: 'frame.height-tolerance',
    title: 'Accuracy of the upright axes',
    symbol: 'z_tol',
    quantity: 'length',
    compose: (read, lists) => {
      const found = smallestAccuracy('upright', read, lists);
      return found && { value: { type: 'number', ...found.accuracy, unit: 'mm' }, origin: { from: 'several', parts: [originAt(found.axis, 'accuracy')] } };
    },
  },
  asFrame('acceleration', 'm/s²'),
  asFrame('moving-mass', 'kg'),
);
