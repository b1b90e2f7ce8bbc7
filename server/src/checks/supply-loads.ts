import type { Evaluation } from '../figures/evaluation.ts';
import type { Origin, Place } from '../machine/origin.ts';
import type { Override, Subject } from '../machine/subject.ts';
import { exactly, sumOf, type Bounded } from '../machine/values.ts';

interface Load {
  readonly title: string;
  readonly current: Bounded;
  readonly place: Place;
}

/** A supply together with what the chosen drives and the heated parts of the machine, evaluated before, take from it. */
export function withItsLoads(supply: Subject, others: readonly Evaluation[]): Subject {
  const axes = loadsOn(supply, others, 'drive', 'drive.supply-current');
  const heaters = loadsOn(supply, others, 'heater', 'heater.supply-current');
  const inputs = new Map<string, Override>();
  if (axes.length > 0) inputs.set('supply.axes-current', together(axes)).set('supply.largest-axis-current', current(largest(axes).current, [largest(axes)]));
  if (heaters.length > 0) inputs.set('supply.heaters-current', together(heaters));
  const all = [...axes, ...heaters];
  if (all.length > 0) inputs.set('supply.summed', { type: 'choice', text: 'yes' }).set('supply.consumers', { type: 'number', ...exactly(all.length), origin: originOf(all) });
  return inputs.size === 0 ? supply : supply.withInputs(inputs);
}

function loadsOn(supply: Subject, others: readonly Evaluation[], kind: 'drive' | 'heater', figure: string): readonly Load[] {
  const here = supply.placeOf('supply');
  return others.flatMap((evaluation): readonly Load[] => {
    const { subject } = evaluation;
    const fed = subject.placeOf('supply');
    if (subject.kind !== kind || !subject.chosen || !subject.isPresent('supply') || !here || !fed || fed.uri !== here.uri || fed.path.join('/') !== here.path.join('/')) return [];
    const taken = evaluation.bounds(figure);
    const place = subject.placeOf(kind);
    const name = subject.fixed.get(kind === 'drive' ? 'axis' : 'heater')?.at(-1) ?? '';
    return taken && place ? [{ title: `${kind === 'drive' ? 'axis' : 'heated part'} "${name}"`, current: taken, place }] : [];
  });
}

const largest = (loads: readonly Load[]): Load => loads.reduce((most, load) => (load.current.nominal > most.current.nominal ? load : most));

const together = (loads: readonly Load[]): Override => current(sumOf(loads.map((load) => load.current)), loads);

const current = ({ nominal, low, high }: Bounded, loads: readonly Load[]): Override => ({ type: 'number', nominal, low, high, unit: 'A', origin: originOf(loads) });

const originOf = (loads: readonly Load[]): Origin => ({ from: 'several', parts: loads.map(({ title, place }) => ({ title, origin: { from: 'here', place } })) });
