import { floatNeeds } from '../figures/supports/float-needs.ts';
import { layoutOf } from '../figures/supports/layout.ts';
import { inputsOf, supportTable } from './support-table.ts';
import { remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** Rounded up to this, m: slots and clearances are made no finer. */
const STEP = 1e-4;

/** Every float that is too small as large as growth and misalignment need it at the worst. */
function enough(context: RemedyContext): readonly Proposal[] {
  const table = supportTable(context);
  const input = context.before.input('axis.support-joints');
  const layout = input.state === 'known' && input.value.type === 'table' ? layoutOf(input.value.rows, input.value.titles) : undefined;
  const place = context.place('supports');
  if (!table || !layout || !place) return [];
  const strain = context.before.bounds('supports.growth-strain');
  const end = context.before.bounds('axis.joint-stiffness-end');
  const strains = strain === undefined ? [0] : [strain.low, strain.high];
  const ends = end === undefined ? [0.5] : [end.low, end.nominal, end.high];
  const worst = new Map<number, number>();
  for (const one of strains) {
    for (const stiff of ends) {
      for (const { index, need, float } of floatNeeds(layout, one, stiff)) if (need > float) worst.set(index, Math.max(need, worst.get(index) ?? 0));
    }
  }
  if (worst.size === 0) return [];
  const roomy = [...worst].map(([index, need]) => ({ index, float: Math.ceil(need / STEP - 1e-6) * STEP }));
  const supports = table.supports.map((support, index) => ({ ...support, float: roomy.find((one) => one.index === index)?.float ?? support.float }));
  if (!context.passes(context.tryWith(inputsOf(supports, table.titles)))) return [];
  const written = (float: number): string => `${Number((float * 1000).toFixed(1))} mm`;
  const changes = roomy.map(({ index, float }): Change => ({ place: { uri: place.uri, path: [...place.path, table.titles[index] ?? '', 'float'] }, value: written(float) }));
  const [only] = roomy;
  const most = Math.max(...roomy.map(({ float }) => float));
  const what = roomy.length === 1 && only ? `Let ${table.titles[only.index] ?? ''} slide ${written(only.float)} each way` : `Let ${roomy.length} supports slide up to ${written(most)} each way`;
  return [{ changes, what }];
}

export default remedy({
  id: 'let-it-slide-farther',
  summary: 'Gives supports that float as much room as growth and misalignment need.',
  cost: 2.5,
  cures: ['float-too-small'],
  propose: enough,
});
