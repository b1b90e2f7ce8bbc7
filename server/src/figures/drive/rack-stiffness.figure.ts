import { stiffnessInSeries, torsionAlongAxis, type StiffnessLink } from '../../mechanics/axial-stiffness.ts';
import { figure, unable } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';

const onlyWhere = { 'drive.transmission': ['rack'] } as const;
const springs = [{ title: 'springs in series' }] as const;
const needs = { teeth: 'rack.stiffness', travel: 'drive.travel-per-shaft-turn' } as const;
const optional = {
  reduction: 'drive.reduction-stiffness', coupling: 'coupling.torsional-stiffness', magnetic: 'motor.magnetic-stiffness', ratio: 'drive.reduction-ratio', units: 'drive.units',
} as const;
const optionalChoices = { motors: 'drive.motors', reduced: 'drive.has-reduction' } as const;

type Values = { readonly [alias in keyof typeof needs]: number } & { readonly [alias in keyof typeof optional]: number | undefined } & { readonly [alias in keyof typeof optionalChoices]: string | undefined };

/** The links between the motor's field and the load, all seen along the axis. */
function linksOf({ teeth, travel, reduction, coupling, magnetic, ratio = 1, units = 1, motors }: Values): readonly StiffnessLink[] {
  const shafts = shaftsPerMotor(motors, units);
  const links: StiffnessLink[] = [{ name: 'the teeth', stiffness: teeth }];
  if (reduction !== undefined) links.push({ name: 'the twist of the reduction', stiffness: torsionAlongAxis(reduction / shafts, travel) });
  if (coupling !== undefined) links.push({ name: 'the twist of the coupling', stiffness: torsionAlongAxis(coupling, travel) });
  if (magnetic !== undefined) links.push({ name: "the motor's magnetic spring", stiffness: torsionAlongAxis((magnetic * ratio ** 2) / shafts, travel) });
  return links;
}

export default [
  figure({
    id: 'drive.axial-stiffness',
    onlyWhere,
    title: 'Axial stiffness of the drive',
    symbol: 'k',
    quantity: 'stiffness',
    unit: 'N/µm',
    meaning: 'How stiffly one drive holds its load along the axis: teeth, twist of reduction and coupling, and the magnetic spring of the motor in series.',
    needs,
    optional,
    optionalChoices,
    compute: (values) => {
      const links = linksOf(values);
      if (links.some((link) => !(link.stiffness > 0))) return unable('one of its links has no stiffness');
      const chain = stiffnessInSeries(links);
      const shares = chain.shares.slice(0, 3).map(({ name, share }) => `${name} ${(share * 100).toFixed(0)} %`);
      const without = values.reduced === 'yes' && values.reduction === undefined ? '; without the reduction, whose stiffness is not known here' : '';
      return { value: chain.total, note: `of the give: ${shares.join(', ')}${without}` };
    },
    formula: '1/k = 1/k_z + n_s (p_w/2π)² (1/k_i + 1/(k_m i²)) + (p_w/2π)²/k_c, n_s: shafts that the motor turns',
    sources: springs,
    rank: 2,
  }),
  figure({
    id: 'drive.softest-share',
    onlyWhere,
    title: 'Share of the softest link',
    symbol: 'σ_k',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the whole give the softest link of the drive makes up.',
    needs: { total: 'drive.axial-stiffness', ...needs },
    optional,
    optionalChoices,
    compute: (values) => {
      const softest = linksOf(values).reduce((least, link) => (link.stiffness < least.stiffness ? link : least));
      return { value: values.total / softest.stiffness, note: softest.name };
    },
    formula: 'σ_k = k / min k_i',
    sources: springs,
    rank: 3,
  }),
];
