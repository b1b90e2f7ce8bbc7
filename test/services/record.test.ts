import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { commissioningDeclarations } from '../../server/src/services/record/commissioning-table.ts';
import { costOf, partsOf } from '../../server/src/services/record/machine-parts.ts';
import { designRecord, hashedText } from '../../server/src/services/record/record.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { describeInput } from '../../server/src/machine/fallback-registry.ts';
import { figuresOf } from '../../server/src/services/figures-table.ts';
import { cautions } from '../../server/src/checks/cautions.ts';
import { snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));

function recordOf(text: string, lists: Readonly<Record<string, string>> = {}): string {
  const snapshot = snapshotOf(text, lists);
  return designRecord(snapshot, { version: '1.2.3', sha256: createHash('sha256').update(hashedText(snapshot)).digest('hex') });
}

const section = (record: string, title: string): string => {
  const from = record.indexOf(`\n## ${title}\n`);
  if (from < 0) throw new Error(`No section ${title}.`);
  const to = record.indexOf('\n## ', from + 1);
  return record.slice(from, to < 0 ? undefined : to);
};

/** The cells of the row of a table whose figure or part has this title. */
const rowOf = (text: string, title: string): readonly string[] => {
  const line = text.split('\n').find((candidate) => candidate.startsWith('|') && candidate.includes(`| ${title} |`));
  if (line === undefined) throw new Error(`No row ${title}.`);
  return line.slice(2, -2).split(' | ').map((cell) => cell.trim());
};

describe('the design record', () => {
  it('names the machine, the content and the tool', () => {
    const text = lift({ 'machine.purpose': 'lifts *trays* | of tiles' });
    const record = recordOf(text);
    expect(record).toMatch(/^<!-- Design record.*-->\n\n# Test lift: design record\n/);
    expect(record).toContain('\nlifts \\*trays\\* \\| of tiles\n');
    expect(record).toContain(`SHA-256: \`${createHash('sha256').update(text).digest('hex')}\``);
    expect(record).toContain('- Written by: axiswright 1.2.3\n');
  });

  it('has a row for every figure that is computed or has none here, each once', () => {
    const text = lift();
    const record = recordOf(text);
    const rows = figuresOf(snapshotOf(text)).filter((row) => row.state !== 'missing');
    const lines = section(record, 'Figures').split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| :---') && !line.startsWith('| Of |'));
    expect(lines).toHaveLength(rows.length);
    expect(new Set(lines.map((line) => line.split(' | ').slice(0, 3).join())).size).toBeGreaterThan(rows.length * 0.95);
    expect(rows.length).toBeGreaterThan(100);
  });

  it('tells value, range, limit and how much of it is used: 220 of 190 rpm is 116 %', () => {
    // 10 mm/s ± 10 % over a lead of 3 mm is 180 to 220 rpm, 200 nominal: hand calculation.
    const record = recordOf(lift({ 'motion.speed': '10 mm/s ± 10 %', 'screw.speed-limit': '190 rpm' }));
    expect(rowOf(record, 'Turning speed')).toEqual(['screw', 'Turning speed', 'n', '200 rpm', '180 to 220 rpm', 'at most 190 rpm', '116 %, fails']);
    expect(section(record, 'Findings')).toMatch(/`screw-too-fast-for-its-maker` at `axes\/lift\/drive\/screw\/speed-limit`\n {2}- .*116 %.*\n {2}- Limit: common practice/);
    expect(section(record, 'Summary')).toMatch(/\| Warnings \| [1-9]/);
  });

  it('puts what decides first, whatever the values are', () => {
    const order = (text: string): readonly string[] => section(recordOf(text), 'Figures').split('\n').filter((line) => line.startsWith('| ')).map((line) => line.split(' | ').slice(0, 3).join());
    // Three quarters of the rotor inertia bring no other figure.
    expect(order(lift({ 'motor.rotor-inertia': '51 g·cm²' }))).toEqual(order(lift()));
    const first = section(recordOf(lift()), 'Figures').split('\n').filter((line) => line.startsWith('| ')).slice(2, 4);
    const decisive = new Set(allFigures().figures.filter((figure) => figure.rank === 1).map((figure) => figure.title));
    for (const line of first) expect(decisive).toContain(line.split(' | ')[1]);
  });

  it('says what could not be computed, and for want of what', () => {
    const record = recordOf(lift({ 'screw.unsupported-length': null }));
    expect(section(record, 'Figures')).toMatch(/- `screw\.unsupported-length`: \d+ figures wait for it/);
  });

  it('shows at most four significant digits among the figures', () => {
    const lines = section(recordOf(lift({ 'motion.speed': '10 mm/s ± 7 %' })), 'Figures').split('\n').filter((line) => line.startsWith('| '));
    const numbers = lines.flatMap((line) => line.split(' | ').slice(3, 5).flatMap((cell) => cell.match(/\d[\d.]*/g) ?? []));
    expect(numbers.length).toBeGreaterThan(100);
    for (const number of numbers) expect(number.replace('.', '').replace(/^0+/, '').replace(/0+$/, '').length, number).toBeLessThanOrEqual(4);
  });

  it('changes only the lines of figures that rest on a changed entry, the content line, and no other', () => {
    const [before, after] = [lift(), lift({ 'motor.rotor-inertia': '70 g·cm²' })].map((text) => ({ rows: figuresOf(snapshotOf(text)), lines: recordOf(text).split('\n') }));
    expect(after?.lines).toHaveLength(before?.lines.length ?? 0);
    const changed = (before?.lines ?? []).filter((line, index) => line !== after?.lines[index]);
    const figures = (before?.rows ?? []).filter((row, index) => JSON.stringify(row.value) !== JSON.stringify(after?.rows[index]?.value));
    const settings = commissioningDeclarations().filter(({ shows }) => typeof shows !== 'function' && figures.some((row) => shows.includes(row.id)));
    const titles = new Set([...figures, ...settings].map(({ title }) => title));
    expect(titles.size).toBeGreaterThan(1);
    expect(changed.length).toBeGreaterThan(1);
    expect(changed.filter((line) => line.startsWith('- Content of the description'))).toHaveLength(1);
    for (const line of changed) {
      if (line.startsWith('- Content of the description')) continue;
      // A line of a table, a remark on such a figure, or what is set by it.
      expect([...titles].some((title) => line.includes(title)), line).toBe(true);
    }
  });

  it('is the same with CR LF line ends and a byte order mark, part lists included', () => {
    const text = `${lift()}uses: [stock.parts.yaml]\n`;
    const list = 'description-version: 1\nparts:\n  spare: { kind: brake, holding-torque: 1 N·m }\n';
    expect(recordOf(text.replaceAll('\n', '\r\n'), { 'stock.parts.yaml': list.replaceAll('\n', '\r\n') })).toBe(recordOf(text, { 'stock.parts.yaml': list }));
    expect(hashedText(snapshotOf(`\ufeff${text}`))).toBe(hashedText(snapshotOf(text)));
    expect(recordOf(text, { 'stock.parts.yaml': list.replace('1 N·m', '2 N·m') })).not.toBe(recordOf(text, { 'stock.parts.yaml': list }));
  });

  it('tells the hazards in their fixed words, and never that a design is safe', () => {
    const record = recordOf(lift());
    const told = section(record, 'Cautions');
    expect(told).toContain(cautions['gravity-load']);
    expect(told).toContain(cautions['pinch-point']);
    expect(told).not.toContain(cautions['mains-voltage']);
    expect(told).toContain('The local electrical and machinery code decides');
    expect(record).not.toMatch(/\b(?:is|are|be|design) safe\b/i);
    expect(section(recordOf(lift({ 'supply.kind': 'mains', 'supply.voltage': '230 V' })), 'Cautions')).toContain(cautions['mains-voltage']);
  });

  it('lists accepted deviations with reason, name and date, and counts them apart', () => {
    const slow = { 'motion.speed': '10 mm/s', 'screw.speed-limit': '150 rpm' };
    const entry = 'accepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: short | moves only, by: R. Okafor, until: 2020-01-31 }\n';
    const [open, accepted] = [recordOf(lift(slow)), recordOf(lift(slow) + entry)];
    // The date is long over; a record knows no day, and tells the date.
    expect(section(accepted, 'Accepted deviations')).toContain('| `screw-too-fast-for-its-maker` | `axes/lift/drive/screw` | short \\| moves only | R. Okafor | 2020-01-31 |');
    expect(section(accepted, 'Findings')).toMatch(/### Accepted\n\n- `screw-too-fast-for-its-maker`/);
    const count = (record: string, what: string): number => Number(new RegExp(`\\| ${what} \\| (\\d+) \\|`).exec(record)?.[1]);
    expect(count(accepted, 'Accepted findings')).toBe(1);
    expect(count(accepted, 'Warnings')).toBe(count(open, 'Warnings') - 1);
  });

  it('sorts its sources, each once', () => {
    const lines = section(recordOf(lift()), 'Sources').split('\n').filter((line) => line.startsWith('- '));
    expect(lines.length).toBeGreaterThan(20);
    expect(lines).toEqual([...new Set(lines)].sort((a, b) => (a < b ? -1 : 1)));
  });

  it('can be written of any text', () => {
    for (const text of ['', 'machine: [', '- 1\n- 2\n', 'machine: Half\naxes:\n  lift:\n', 'accepted: 3\nparts: {}\nbudget: {}\n', 'description-version: 1\nmachine: "<script>alert(1)</script>"\naxes: {}\n']) {
      const record = recordOf(text);
      expect(record).toContain('## Cautions');
      expect(record).not.toContain('undefined');
      expect(record).not.toContain('<script>');
    }
  });
});

describe('the commissioning table', () => {
  it('is found by its place: one file a line, named like it, each with a caution', () => {
    const declarations = commissioningDeclarations();
    expect(new Set(declarations.map(({ id }) => id)).size).toBe(declarations.length);
    const orders = declarations.map(({ order }) => order);
    expect(orders).toEqual([...orders].sort((a, b) => a - b));
    for (const { caution, shows, id } of declarations) {
      expect(caution.length, id).toBeGreaterThan(30);
      if (typeof shows === 'function') continue;
      for (const shown of shows) expect(allFigures().get(shown) ?? describeInput(shown).title, `${id}: ${shown}`).toBeTruthy();
    }
  });

  it('gives what is copied into a controller with all its digits', () => {
    // 200 full steps and 16 microsteps over a lead of 3 mm: 3200 / 3 = 1066.67 steps/mm: hand calculation.
    const record = section(recordOf(lift({ 'controller.microsteps': 16 })), 'Commissioning');
    expect(record).toContain('| Steps per millimetre | 1066.67 steps/mm |');
    expect(record).toContain('| Travel per turn of the motor | 3 mm |');
    // 1.5 A peak is 1.06 A root mean square.
    expect(record).toContain('| Motor current, peak of a phase | 1.5 A |  | 1.06 A root mean square |');
  });

  it('tells tension and strum of a belt, and the order of levelling where there is one', () => {
    const belt = section(recordOf(yamlOf(machineWith('belt'))), 'Commissioning');
    expect(belt).toContain('| Belt tension at rest | 80 N |');
    expect(belt).toContain('| Strum of the belt, carriage at the near end |');
    expect(belt).not.toContain('Lifts in the order');
    const bed = machineWith('bed') as { axes: { lift: Record<string, unknown> } };
    bed.axes.lift['levelling'] = { lifts: ['screw 2', 'screw 1', 'screw 3'], 'moved-by': 'own-motors' };
    expect(section(recordOf(yamlOf(bed as never)), 'Commissioning')).toContain('| Lifts in the order of levelling | 1. screw 2, 2. screw 1, 3. screw 3 |');
  });
});

describe('parts and cost', () => {
  const partsIn = (text: string) => {
    const { analysis } = snapshotOf(text);
    if (!analysis) throw new Error('No analysis.');
    const parts = partsOf(analysis);
    return { parts, cost: costOf(parts, analysis) };
  };

  it('counts a part for each drive, and sums each currency by itself', () => {
    // The lift has two units: 2 × 14.50 + 2 × 9.25 = 47.50 EUR, and one supply of 30 USD: hand calculation.
    const { parts, cost } = partsIn(lift({ 'motor.price': '14.50 EUR', 'motor.supplier-note': 'corner shop', 'screw.price': '€ 9.25', 'supply.price': '$30' }));
    expect(parts.find((part) => part.id === 'parts/lift-motor')).toMatchObject({ pieces: 2, size: 'NEMA 17', price: { currency: 'EUR', nominal: 14.5 }, supplierNote: 'corner shop' });
    expect(cost.totals.map(({ currency, nominal }) => [currency, nominal])).toEqual([['EUR', 47.5], ['USD', 30]]);
    expect(cost.unpriced).toBe(parts.length - 3);
  });

  it('holds a budget against the sum of its own currency, at the high end', () => {
    // 2 × (20 ± 2) EUR is 36 to 44 EUR, 110 % of a budget of 40.
    const record = recordOf(lift({ 'motor.price': '20 EUR ± 2 EUR', 'supply.price': '30 USD', 'machine.budget': '40 EUR' }));
    const told = section(record, 'Parts and cost');
    expect(told).toContain('- Sum: 36.00 to 44.00 EUR\n- Sum: 30.00 USD\n- Budget: 40.00 EUR (110 % used, exceeded); USD not converted\n');
    expect(snapshotOf(lift({ 'machine.budget': '40' })).diagnostics.map(({ code }) => code)).toContain('unit-missing');
  });

  it('counts what two axes share once', () => {
    const { parts } = partsIn(yamlOf(machineWith('crossed', { 'motor.price': '28 EUR' })));
    expect(parts.filter((part) => part.id === 'parts/lift-motor').map(({ pieces }) => pieces)).toEqual([2]);
  });

  it('takes a part in a part list, and stages of a reduction', () => {
    const machine = machineWith('lift', { 'drive.reduction': [{ kind: 'belt', 'driving-teeth': 16, 'driven-teeth': 48, price: '12 EUR', 'supplier-note': 'by the metre' }] });
    delete machine['parts'];
    machine['uses'] = ['stock.parts.yaml'];
    const { analysis } = snapshotOf(yamlOf(machine), { 'stock.parts.yaml': 'description-version: 1\nparts:\n  lift-motor: { kind: stepper, holding-torque: 1 N·m, current: 1 A, price: 10 EUR }\n' });
    if (!analysis) throw new Error('No analysis.');
    const parts = partsOf(analysis);
    expect(parts.find((part) => part.id === 'parts/lift-motor')?.price?.nominal).toBe(10);
    expect(parts.find((part) => part.title === 'Reduction of lift')).toMatchObject({ size: 'belt, 16 to 48 teeth', pieces: 2, price: { nominal: 12, currency: 'EUR' }, supplierNote: 'by the metre' });
    expect(costOf(parts, analysis).totals[0]?.nominal).toBe(44); // 2 × 10 + 2 × 12
  });
});
