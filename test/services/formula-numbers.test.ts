import { describe, expect, it } from 'vitest';
import { numbersPutIn, plainSymbol, prettySymbol } from '../../server/src/services/formula-numbers.ts';

const values = [
  { symbol: 'v', text: '60 mm/s' }, { symbol: 'l', text: '8 mm' }, { symbol: 'F_0', text: '64 N' }, { symbol: 'n_u', text: '2' }, { symbol: 'β', text: '90°' },
  { symbol: 'µ', text: '0.15' }, { symbol: 'Δ', text: '-3 mm' },
];

describe('numbers put into a formula', () => {
  it('stand in brackets where they have a unit or a sign', () => {
    expect(numbersPutIn('n = v / l', values)).toBe('(60 mm/s) / (8 mm)');
    expect(numbersPutIn('x = µ + Δ', values)).toBe('0.15 + (-3 mm)');
  });
  it('match a symbol however its index is written', () => {
    expect(numbersPutIn('F = F₀ / n_u', values)).toBe('(64 N) / 2');
    expect(numbersPutIn('F = μ F₀', values)).toBe('0.15 · (64 N)');
  });
  it('are multiplied with a point where symbols stand side by side, but not behind the name of a function', () => {
    expect(numbersPutIn('x = 2 F₀ sin β', values)).toBe('2 · (64 N) · sin 90°');
    expect(numbersPutIn('x = l²', values)).toBe('(8 mm)²');
  });
  it('are put into a formula without an equals sign too', () => {
    expect(numbersPutIn('v / l', values)).toBe('(60 mm/s) / (8 mm)');
  });
  it('are left out where a point would change what stands below a stroke', () => {
    expect(numbersPutIn('x = F₀ / n_u l', values)).toBeUndefined();
    expect(numbersPutIn('x = F₀ / 2l', values)).toBeUndefined();
    expect(numbersPutIn('x = F₀ · l/2π', values)).toBe('(64 N) · (8 mm)/2π');
    expect(numbersPutIn('x = F₀ / (n_u l)', values)).toBe('(64 N) / (2 · (8 mm))');
  });
  it('are left out of prose, of unknown symbols and of symbols that mean two things', () => {
    expect(numbersPutIn('x = v, with l below 1', values)).toBeUndefined();
    expect(numbersPutIn('x = v / q', values)).toBeUndefined();
    expect(numbersPutIn('x = v', [...values, { symbol: 'v', text: '1 m/s' }])).toBeUndefined();
    expect(numbersPutIn('holds: s ≥ 1.5; else drops', values)).toBeUndefined();
    expect(numbersPutIn('x = (v', values)).toBeUndefined();
  });
});

describe('symbols', () => {
  it('have one spelling for comparing', () => {
    expect(plainSymbol('F₀')).toBe(plainSymbol('F_0'));
    expect(plainSymbol('nₘₐₓ')).toBe('n_max');
  });
  it('have indices of digits lowered and all others behind an underscore, so that one table or formula is of one make', () => {
    expect(prettySymbol('F_0 = d_2')).toBe('F₀ = d₂');
    expect(prettySymbol('v_300')).toBe('v₃₀₀');
    expect(prettySymbol('S_T = Tₐ / max(T₂, T_1)')).toBe('S_T = T_a / max(T₂, T₁)');
    expect(prettySymbol('nₘₐₓ')).toBe('n_max');
    for (const other of ['F_g', 'T_d,s', 'η_i,r', 'h_fs', 'x_2p', 'x_p2', 'x_2,s', 'µ′']) expect(prettySymbol(other)).toBe(other);
  });
});
