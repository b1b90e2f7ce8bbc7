import type { StiffnessLink } from '../../mechanics/axial-stiffness.ts';
import { figure } from '../figure.ts';
import { inSeries, softestShare, trainLinkNeeds as optional, trainLinks } from './train-links.ts';

const onlyWhere = { 'drive.transmission': ['belt'] } as const;
const springs = [{ title: 'springs in series' }] as const;
const needs = { belt: 'belt.span-stiffness-least', travel: 'drive.travel-per-shaft-turn' } as const;
const optionalChoices = { motors: 'drive.motors', reduced: 'drive.has-reduction' } as const;

type Values = { readonly [alias in keyof typeof needs]: number } & { readonly [alias in keyof typeof optional]: number | undefined } & { readonly [alias in keyof typeof optionalChoices]: string | undefined };

/** The links between the motor's field and the load, all seen along the axis. */
const linksOf = ({ belt, travel, ...train }: Values): readonly StiffnessLink[] => [{ name: 'the belt', stiffness: belt }, ...trainLinks(travel, train)];

export default [
  figure({
    id: 'drive.axial-stiffness',
    onlyWhere,
    title: 'Axial stiffness of the drive',
    symbol: 'k',
    quantity: 'stiffness',
    unit: 'N/µm',
    meaning: 'How stiffly one drive holds its load along the axis where the belt is softest: belt, twist of reduction and coupling, and the magnetic spring of the motor in series.',
    needs,
    optional,
    optionalChoices,
    compute: (values) => {
      const left = [...(values.magnetic === undefined ? ['motor'] : []), ...(values.reduced === 'yes' && values.reduction === undefined ? ['reduction'] : [])];
      return inSeries(linksOf(values), left.length === 0 ? '' : `; without the ${left.join(' and the ')}, not known here`);
    },
    formula: '1/k = 1/k_b + n_s (p_w/2π)² (1/k_i + 1/(k_m i²)) + (p_w/2π)²/k_c, n_s: pulleys that the motor turns',
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
    compute: (values) => softestShare(linksOf(values), values.total),
    formula: 'σ_k = k / min k_i',
    sources: springs,
    rank: 3,
  }),
];
