import { figure, unable } from '../figure.ts';
import { ALL_KINDS } from './jamming.figure.ts';
import { onRoundShafts } from './bending-shaft.ts';

export default [
  figure({
    id: 'guides.carriage-gap',
    title: 'Room between neighbouring carriages',
    symbol: 'g_c',
    quantity: 'position',
    unit: 'mm',
    meaning: 'Free length between two carriages that follow each other on a rail; negative where they would stand in each other.',
    onlyWhere: { 'guides.kind': ALL_KINDS },
    needs: { spacing: 'guides.carriage-spacing', length: 'guides.carriage-length', carriages: 'guides.carriages' },
    compute: ({ spacing, length, carriages }) => (carriages >= 2 ? spacing / (carriages - 1) - length : unable('there is one carriage on each rail')),
    formula: 'g_c = b_c/(n_c − 1) − l_c',
    sources: [{ title: 'geometry' }],
    rank: 3,
  }),
  figure({
    id: 'guides.shaft-length-needed',
    title: 'Free length that the travel needs',
    symbol: 'L_need',
    quantity: 'length',
    unit: 'mm',
    meaning: 'Travel and guided length together: so much of the shafts must lie free between their holders.',
    onlyWhere: onRoundShafts,
    needs: { travel: 'axis.travel', length: 'guides.guided-length' },
    compute: ({ travel, length }) => travel + length,
    formula: 'L_need = h + s_g',
    sources: [{ title: 'geometry' }],
    rank: 3,
  }),
];
