import { describe, expect, it } from 'vitest';
import { analyse, keptOf } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf, type PlainMachine } from '../support/machines.ts';

/** Two axes and two heated parts on the supply `main`, another heated part on `other`. */
function twoAxes(): PlainMachine {
  const machine = machineWith('lift', { 'supply.current': '10 A' });
  const axes = machine['axes'] as PlainMachine;
  axes['second'] = structuredClone(axes['lift']);
  (machine['supplies'] as PlainMachine)['other'] = { kind: 'extra-low-voltage', voltage: '12 V', current: '10 A' };
  machine['heating'] = {
    bed: { power: '96 W', supply: 'main' },
    nozzle: { power: '48 W', supply: 'main' },
    fan: { power: '24 W', supply: 'other' },
  };
  return machine;
}

const analysed = (machine: PlainMachine) => analyse(readDocument('file:///test.machine.yaml', yamlOf(machine)), []);
const supplyOf = (machine: PlainMachine, name: string) => {
  const found = analysed(machine).evaluations.find(({ subject }) => subject.id === `supplies/${name}`);
  if (!found) throw new Error(`no supply ${name}`);
  return found;
};

describe('what hangs on a supply', () => {
  it('is the sum of its own axes and heated parts', () => {
    // Heating: (96 + 48)/24 = 6 A. Each axis takes what its own figure says; both alike.
    const whole = analysed(twoAxes());
    const axis = whole.evaluations.find(({ subject }) => subject.id === 'axes/lift/drive')?.bounds('drive.supply-current')?.nominal ?? 0;
    expect(axis).toBeGreaterThan(0);
    const supply = supplyOf(twoAxes(), 'main');
    expect(supply.bounds('supply.heaters-current')?.nominal).toBeCloseTo(6, 9);
    expect(supply.bounds('supply.load-current')?.nominal).toBeCloseTo(6 + 2 * axis, 9);
    expect(supply.bounds('supply.consumers')?.nominal).toBe(4);
    // 24 W at 12 V.
    expect(supplyOf(twoAxes(), 'other').bounds('supply.load-current')?.nominal).toBeCloseTo(2, 9);
  });

  it('names its parts as where it comes from', () => {
    const input = supplyOf(twoAxes(), 'main').input('supply.axes-current');
    expect(input).toMatchObject({ state: 'known', origin: { from: 'several', parts: [{ title: 'axis "lift"' }, { title: 'axis "second"' }] } });
  });

  it('does not count an option that is not chosen, and is left out for a supply without loads', () => {
    const machine = twoAxes();
    const second = (machine['axes'] as PlainMachine)['second'] as PlainMachine;
    second['drive-options'] = { one: second['drive'], two: structuredClone(second['drive']) };
    second['chosen-drive'] = 'two';
    delete second['drive'];
    expect(supplyOf(machine, 'main').bounds('supply.consumers')?.nominal).toBe(4);
    (machine['supplies'] as PlainMachine)['idle'] = { kind: 'extra-low-voltage', voltage: '5 V' };
    expect(supplyOf(machine, 'idle').result('supply.load-current').state).toBe('left-out');
  });

  it('is the same after an edit as in a fresh analysis', () => {
    const before = analysed(twoAxes());
    const kept = keptOf(before);
    const heavier = twoAxes();
    ((heavier['masses'] as PlainMachine)['plate'] as PlainMachine)['mass'] = '40 kg';
    ((heavier['heating'] as PlainMachine)['bed'] as PlainMachine)['power'] = '300 W';
    const text = readDocument('file:///test.machine.yaml', yamlOf(heavier));
    const incremental = analyse(text, [], kept);
    const fresh = analyse(text, []);
    expect(incremental.findings).toEqual(fresh.findings);
    expect(incremental.findings.map(({ check }) => check)).toContain('supply-overloaded');
  });

  it('says nothing of a drive that merely sees its voltage', () => {
    const drive = analysed(twoAxes()).evaluations.find(({ subject }) => subject.id === 'axes/lift/drive');
    expect(drive?.result('supply.load-current').state).toBe('left-out');
  });
});
