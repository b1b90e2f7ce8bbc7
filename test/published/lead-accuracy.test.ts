/** Lead accuracy and run-out tolerances against printed values. */
import { describe, expect, test } from 'vitest';
import { leadAccuracyGrade, type LeadAccuracyGrade } from '../../server/src/catalogue/lead-accuracy-grades.ts';
import { travelDeviation, type LeadGrade } from '../../server/src/mechanics/lead-accuracy.ts';
import { permittedRunOut } from '../../server/src/mechanics/run-out.ts';

function gradeOf(name: string): LeadGrade {
  const { values } = leadAccuracyGrade(name) as LeadAccuracyGrade;
  return values.kind === 'per length' ? { kind: 'per length', deviationPer300: values.deviationPer300.high } : values;
}

function micrometres(name: string, travelMillimetres: number): { mean: number; worst: number } {
  const found = travelDeviation(gradeOf(name), travelMillimetres / 1000);
  if (found.kind !== 'deviation') throw new Error(`${name} ends at ${found.longest} m`);
  return { mean: found.meanTravel * 1e6, worst: found.worst * 1e6 };
}

describe('travel deviation', () => {
  // As quoted from ISO 3408-3 by pages that print them.
  test('ISO 3408-3, grade 3: 12 µm over 300 mm, only 21 µm over 900 mm', () => {
    expect(micrometres('P3', 300).mean).toBeCloseTo(12, 6);
    expect(micrometres('P3', 900).mean).toBeCloseTo(21, 6);
  });
  test('ISO 3408-3, grade 1: 6 µm over 315 mm', () => {
    expect(micrometres('P1', 315).mean).toBeCloseTo(6, 6);
  });
  // ISO 286-1, IT5 over 315 to 400 mm: 25 µm, over 1600 to 2000 mm: 65 µm.
  test('grade 5 follows IT5 of ISO 286-1: 25 µm to 400 mm, 65 µm to 2000 mm', () => {
    expect(micrometres('P5', 400).mean).toBeCloseTo(25, 6);
    expect(micrometres('P5', 2000).mean).toBeCloseTo(65, 6);
  });
  // JIS B 1192 as quoted on a page that was read: C7 0.05 mm, C10 0.21 mm over 300 mm.
  test('JIS B 1192: C7 50 µm and C10 210 µm over 300 mm', () => {
    expect(micrometres('C7', 300).worst).toBeCloseTo(50, 6);
    expect(micrometres('C10', 300).worst).toBeCloseTo(210, 6);
  });
  // Rule of the standard for transport grades, from memory: e_p = 2 l_u/300 · v_300p.
  test('transport grades: T7 104 µm over 300 mm, twice that over 600 mm', () => {
    expect(micrometres('T7', 300).mean).toBeCloseTo(104, 6);
    expect(micrometres('T7', 600).mean).toBeCloseTo(208, 6);
  });
});

describe('run-out', () => {
  // Page on form tolerances of JIS B 1192: 500 mm long, 80 mm from the support, total 0.06 mm, table 0.012 mm: 0.0096 added, printed as 0.01 and 0.022.
  test('JIS B 1192, correction for the measuring distance: 0.022 mm', () => {
    expect(permittedRunOut(0.012e-3, 0.06e-3, 0.08, 0.5) * 1000).toBeCloseTo(0.022, 3);
  });
});
