import { tensionNeeded, tensionRange } from '../../mechanics/belt-spans.ts';
import { beltStrain, STRAIN_ALLOWED, tensionAllowed } from '../../mechanics/belt-strength.ts';
import { figure, unable } from '../figure.ts';
import { impossible, springs, travelNeeds, travelOf, travelOptional } from './path.ts';

const forces = { towards: 'belt.force-towards', away: 'belt.force-away' } as const;
const loaded = { ...travelNeeds, ...forces, tension: 'belt.tension' } as const;
const pages = { title: 'data pages of four steel-cord belts, read: 0.40 % strain, a quarter of the breaking force', where: 'carried over to other cords by us' } as const;
const half = { title: 'the rule "half of the peak force" is this for equal spans' } as const;

export default [
  figure({
    id: 'belt.tension-needed',
    title: 'Tension needed',
    symbol: 'T_min',
    quantity: 'force',
    unit: 'N',
    meaning: 'Tension at rest below which one span hangs slack somewhere on the travel at the largest force. The short span next to the pulley loses nearly all of the force that pushes away from it, not half.',
    needs: { ...travelNeeds, ...forces },
    optional: travelOptional,
    compute: ({ towards, away, ...travel }) => {
      const reason = impossible(travel);
      return reason === undefined ? tensionNeeded(travelOf(travel), { towards, away }) : unable(reason);
    },
    formula: 'T_min = max(F_t L₁, F_a L₂) / (L₁ + L₂) over the travel',
    sources: [springs, half],
    rank: 2,
  }),
  figure({
    id: 'belt.slack-factor',
    title: 'Tension over the tension needed',
    symbol: 'S_T',
    quantity: 'ratio',
    meaning: 'Below 1 one span hangs slack at the largest force, and the other holds alone.',
    needs: { tension: 'belt.tension', needed: 'belt.tension-needed' },
    compute: ({ tension, needed }) => (needed > 0 ? tension / needed : unable('no force loosens the belt')),
    formula: 'S_T = T₀ / T_min',
    sources: [{ title: 'definition' }],
    rank: 2,
  }),
  figure({
    id: 'belt.tight-tension',
    title: 'Largest tension',
    symbol: 'T_1',
    quantity: 'force',
    unit: 'N',
    meaning: 'Tension of the pulling span at the largest force, at the worse end of the travel.',
    needs: loaded,
    optional: travelOptional,
    compute: ({ towards, away, tension, ...travel }) => {
      const reason = impossible(travel);
      return reason === undefined ? tensionRange(travelOf(travel), tension, { towards, away }).most : unable(reason);
    },
    formula: 'T₁ = T₀ + F L_other/(L₁ + L₂); F where the other span is slack',
    sources: [springs],
    rank: 2,
  }),
  figure({
    id: 'belt.slack-tension',
    title: 'Least tension',
    symbol: 'T_2',
    quantity: 'force',
    unit: 'N',
    meaning: 'Tension of the span that does not pull, at the largest force and the worse end of the travel; 0 where it hangs slack.',
    needs: loaded,
    optional: travelOptional,
    compute: ({ towards, away, tension, ...travel }) => {
      const reason = impossible(travel);
      return reason === undefined ? tensionRange(travelOf(travel), tension, { towards, away }).least : unable(reason);
    },
    formula: 'T₂ = T₀ − F L_tight/(L₁ + L₂), at least 0',
    sources: [springs],
    rank: 3,
  }),
  figure({
    id: 'belt.tension-allowed',
    title: 'Tension allowed',
    symbol: 'T_max',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest tension that the belt should see in running: the limit given for it, else the lesser of 0.4 % strain and a quarter of its breaking force.',
    needs: {},
    optional: { written: 'belt.tension-limit', specificStiffness: 'belt.specific-stiffness', breakingForce: 'belt.breaking-force' },
    compute: (limits) => {
      if (Object.values(limits).some((limit) => limit !== undefined && limit <= 0)) return unable('a limit, the stiffness or the breaking force of the belt is 0');
      const allowed = tensionAllowed(limits);
      if (!allowed) return unable('neither a limit nor stiffness or breaking force of the belt is known');
      const by = { written: 'the limit given for it', strain: '0.4 % strain decides', breaking: 'a quarter of the breaking force decides' } as const;
      return { value: allowed.value, note: by[allowed.by] };
    },
    formula: 'T_max = T_lim, or min(0.004 c_b, F_B/4)',
    sources: [pages],
    rank: 2,
  }),
  figure({
    id: 'belt.tension-use',
    title: 'Tension over what is allowed',
    symbol: 'u_T',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest tension over what the belt should see in running.',
    needs: { tight: 'belt.tight-tension', allowed: 'belt.tension-allowed' },
    compute: ({ tight, allowed }) => tight / allowed,
    formula: 'u_T = T₁ / T_max',
    sources: [{ title: 'definition' }],
    rank: 1,
    hint: ({ nominal }) => `tension ${Math.round(nominal * 100)} %`,
  }),
  figure({
    id: 'belt.strain-use',
    title: 'Strain over 0.4 %',
    symbol: 'ε_b/0.4 %',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Strain of the pulling span at the largest force over the 0.4 % at which data pages of steel-cord belts draw the line.',
    needs: { tight: 'belt.tight-tension', specific: 'belt.specific-stiffness' },
    compute: ({ tight, specific }) => {
      if (!(specific > 0)) return unable('the stiffness of the belt is 0');
      const strain = beltStrain(tight, specific);
      return { value: strain / STRAIN_ALLOWED, note: `strain ${(strain * 100).toPrecision(2)} %` };
    },
    formula: 'T₁ / (0.004 c_b)',
    sources: [pages],
    rank: 3,
  }),
  figure({
    id: 'belt.breaking-use',
    title: 'Tension over the breaking force',
    symbol: 'T_1/F_B',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest tension over the force at which the belt breaks.',
    needs: { tight: 'belt.tight-tension', breaking: 'belt.breaking-force' },
    compute: ({ tight, breaking }) => tight / breaking,
    formula: 'T₁ / F_B',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'belt.half-breaking',
    title: 'Half of the breaking force',
    symbol: 'F_B/2',
    quantity: 'force',
    unit: 'N',
    meaning: 'Tension above which the belt may tear before long.',
    needs: { breaking: 'belt.breaking-force' },
    compute: ({ breaking }) => (breaking > 0 ? breaking / 2 : unable('the breaking force of the belt is 0')),
    formula: 'F_B / 2',
    sources: [{ title: 'our threshold: twice what data pages allow' }],
    rank: 3,
  }),
  figure({
    id: 'belt.tension-highest',
    title: 'Highest tension to set',
    symbol: 'T_0,max',
    quantity: 'force',
    unit: 'N',
    meaning: 'Tension at rest with which the largest tension just reaches what is allowed.',
    needs: { allowed: 'belt.tension-allowed', ...travelNeeds, ...forces },
    optional: travelOptional,
    compute: ({ allowed, towards, away, ...travel }) => {
      const reason = impossible(travel);
      if (reason !== undefined) return unable(reason);
      // At a tension that keeps both spans taut, the rise by the force is the same whatever the tension.
      const taut = tensionNeeded(travelOf(travel), { towards, away });
      const rise = tensionRange(travelOf(travel), taut, { towards, away }).most - taut;
      return allowed - rise >= taut ? allowed - rise : unable('no tension keeps the belt taut and below what is allowed');
    },
    formula: 'T₀,max = T_max − max F L_other/(L₁ + L₂)',
    sources: [springs],
    rank: 3,
  }),
];
