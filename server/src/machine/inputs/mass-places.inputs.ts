import { fallbacks, type Member } from '../input.ts';
import { massRowOf, type MassPlace } from '../mass-place.ts';
import type { Origin } from '../origin.ts';
import { between, isUncertain, type Bounded } from '../values.ts';

const here = (member: Member): { title: string; origin: Origin } => ({ title: member.title, origin: { from: 'here', place: member.place } });

/** A coordinate that may lie anywhere in a width about its place. */
const over = (place: Bounded, width: Bounded | undefined): Bounded =>
  width === undefined ? place : { nominal: place.nominal, low: place.low - Math.abs(width.high) / 2, high: place.high + Math.abs(width.high) / 2 };

/** How heavy a mass is and where it may lie; undefined where one of both is missing or cannot be read. */
function massPlace(member: Member): MassPlace | undefined {
  const [mass, [x, y, z] = []] = [member.number('mass'), member.quantities('at', 'position')];
  const [wide, deep] = member.quantities('area', 'length') ?? [];
  return mass && x && y ? { mass, x: over(x, wide), y: over(y, deep), z } : undefined;
}

/** Whether it may lie elsewhere, or be heavier or lighter, by more than its place and mass are uncertain. */
const isOpen = ({ mass, x, y }: MassPlace): boolean => [mass, x, y].some(isUncertain);

/** Directions that a joint on a level axis can show: along the rail, shaft, screw or belt. */
const FOLLOWS = /^(rail-carriage|carriage-on-ball|wheel-carriage|vee-wheel|flat-wheel|one-bushing|two-bushings|self-aligning-bushing|fork|nut-.+|belt)$/;

export default fallbacks(
  {
    input: 'axis.mass-places',
    title: 'Masses and where their centres of gravity lie',
    symbol: 'm_i',
    compose: (_read, lists) => {
      const members = lists.named('axis.moves', 'masses');
      if (!members || members.length === 0) return undefined;
      const places = members.flatMap((member) => massPlace(member) ?? []);
      // A mass without a place makes the centre of gravity unknown.
      if (places.length < members.length) return undefined;
      return { value: { type: 'table', rows: places.map(massRowOf), titles: members.map((member) => member.title) }, origin: { from: 'several', parts: members.map(here) } };
    },
  },
  {
    // Carries what tables cannot: that the figures under it have a range. Nothing where every mass has its one place.
    input: 'axis.load-place',
    title: 'Where what it carries lies, from the written places to the worst',
    symbol: 'ξ',
    quantity: 'share',
    compose: (_read, lists) => {
      const open = (lists.named('axis.moves', 'masses') ?? []).filter((member) => {
        const place = massPlace(member);
        return place !== undefined && isOpen(place);
      });
      return open.length === 0 ? undefined : { value: { type: 'number', ...between(0, 0, 1), unit: '%' }, origin: { from: 'several', parts: open.map(here) } };
    },
  },
  {
    // A level axis moves along its rails, shafts, screws and belts.
    input: 'axis.along',
    symbol: '',
    compose: (read, lists) => {
      const inclination = read.number('axis.inclination');
      const origin = read.origin('axis.inclination');
      if (inclination === undefined || origin === undefined) return undefined;
      if (Math.abs(inclination.nominal - Math.PI / 2) < 1e-6) return { value: { type: 'choice', text: 'z' }, origin };
      const following = (lists.entries('axis.supports') ?? []).filter((support) => FOLLOWS.test(support.choice('joint') ?? '') && ['x', 'y'].includes(support.choice('along') ?? ''));
      const [first] = following;
      const text = first?.choice('along');
      if (text === undefined || following.some((support) => support.choice('along') !== text)) return undefined;
      return { value: { type: 'choice', text }, origin: { from: 'several', parts: following.map(here) } };
    },
  },
);
