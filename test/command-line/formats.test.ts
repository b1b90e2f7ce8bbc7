import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { axiswright, Folder, root, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 30_000 }); // many processes, on machines that do other things too

/** A lift on a screw that runs down by itself, with a speed that its maker does not allow: 20 mm/s with a lead of 8 mm is 150 rpm, a fifth above 125. */
const lift = yamlOf(machineWith('lift', { brake: null, 'screw.size': 'Tr8x8(P2)', 'screw.speed-limit': '125 rpm', 'motion.speed': '20 mm/s' }));
const folder = new Folder({
  'lift.machine.yaml': lift,
  'crlf/lift.machine.yaml': lift.replaceAll('\n', '\r\n'),
  'slip.machine.yaml': twoErrors,
  'stock.parts.yaml': 'description-version: 1\nparts:\n  m: { kind: stepper, holding-torque: 1 }\n',
});
afterAll(() => folder.remove());

const ajv = new Ajv2020({ strict: true, strictRequired: false });
const validator = (name: string) => ajv.compile(JSON.parse(readFileSync(join(root, 'schemas', name), 'utf8')) as object);
const run = (...args: string[]) => axiswright(args, { folder: folder.path });

interface Findings {
  readonly status: number;
  readonly counts: Readonly<Record<string, number>>;
  readonly files: readonly {
    readonly path: string;
    readonly findings: readonly { readonly code: string; readonly severity: string; readonly message: string; readonly cautions: readonly string[]; readonly range: { readonly start: { readonly line: number; readonly column: number; readonly offset: number }; readonly end: { readonly offset: number } }; readonly worst?: number; readonly limit?: number }[];
  }[];
}

describe('findings as JSON', () => {
  it('follow their schema, also where something could not be read', async () => {
    const validate = validator('findings-1.schema.json');
    for (const args of [['.'], ['slip.machine.yaml', '--no-fixes'], ['absent.machine.yaml', 'none*', 'slip.machine.yaml'], ['none*', '--allow-none'], ['.', '--fail-on', 'information']]) {
      const { out, status } = await run('check', '--format', 'json', ...args);
      const document = JSON.parse(out) as Findings;
      expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
      expect(document.status).toBe(status);
    }
  });

  it('hold positions, values in SI and cautions', async () => {
    const { out } = await run('check', '--format', 'json', 'lift.machine.yaml');
    const [file] = (JSON.parse(out) as Findings).files;
    const fast = file?.findings.find((finding) => finding.code === 'screw-too-fast-for-its-maker');
    // 150 and 125 turns a minute are 2π · 2.5 = 15.708 and 2π · 125/60 = 13.090 rad/s: hand calculation.
    expect(fast).toMatchObject({ severity: 'warning', worst: expect.closeTo(15.708, 3) as number, limit: expect.closeTo(13.09, 3) as number });
    expect(lift.slice(fast?.range.start.offset, fast?.range.end.offset)).toBe('125 rpm');
    const before = lift.slice(0, lift.indexOf('125 rpm'));
    expect(fast?.range.start).toMatchObject({ line: before.split('\n').length, column: before.length - before.lastIndexOf('\n') });
    // tan λ = l / (π d₂) = 8 / (7π) = 0.364; greased bronze does not hold that: the load runs down, which concerns people.
    expect(file?.findings.filter((finding) => finding.cautions.some((caution) => caution.startsWith('Gravity-loaded axis: '))).length).toBeGreaterThan(0);
  });

  it('are in the order of path and position', async () => {
    const { files, counts } = JSON.parse((await run('check', '--format', 'json', '.')).out) as Findings;
    const paths = files.map((file) => file.path);
    expect(paths).toEqual(['crlf/lift.machine.yaml', 'lift.machine.yaml', 'slip.machine.yaml', 'stock.parts.yaml']);
    for (const { findings } of files) {
      const starts = findings.map((finding) => finding.range.start.offset);
      expect(starts).toEqual([...starts].sort((a, b) => a - b));
    }
    const severities = files.flatMap((file) => file.findings.map((finding) => finding.severity));
    for (const [severity, count] of Object.entries(counts)) expect(severities.filter((one) => one === severity)).toHaveLength(count);
  });

  it('are the same, offsets apart, with CR LF line ends', async () => {
    const { files } = JSON.parse((await run('check', '--format', 'json', 'lift.machine.yaml', 'crlf/lift.machine.yaml')).out) as Findings;
    const lean = files.map((file) => file.findings.map(({ code, message, range }) => ({ code, message, line: range.start.line, column: range.start.column })));
    expect(lean[0]).toEqual(lean[1]);
  });
});

describe('figures', () => {
  interface Figures {
    readonly files: readonly { readonly path: string; readonly figures: readonly { readonly id: string; readonly state: string; readonly value?: { readonly nominal: number }; readonly inUnit?: { readonly nominal: number }; readonly unit: string; readonly siUnit: string; readonly formula: string; readonly terms: readonly { readonly id: string; readonly places: readonly { readonly path: string; readonly line: number }[] }[] }[] }[];
  }

  it('as JSON follow their schema', async () => {
    const validate = validator('figures-1.schema.json');
    for (const args of [['.'], ['.', '--all'], ['lift.machine.yaml', '--figure', 'screw.turning-speed'], ['absent.machine.yaml', '.']]) {
      const { out } = await run('figures', '--format', 'json', ...args);
      expect(validate(JSON.parse(out)), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    }
  });

  it('hold the value in SI and in the customary unit, and where its terms are written', async () => {
    const { out } = await run('figures', '--format', 'json', '--figure', 'screw.turning-speed', 'lift.machine.yaml');
    const speed = (JSON.parse(out) as Figures).files[0]?.figures[0];
    expect(speed).toMatchObject({ id: 'screw.turning-speed', state: 'computed', unit: 'rpm', siUnit: 'rad/s', formula: 'n = v / l' });
    expect(speed?.value?.nominal).toBeCloseTo(15.708, 3); // 20/8 turns a second times 2π
    expect(speed?.inUnit?.nominal).toBeCloseTo(150, 6);
    const line = lift.slice(0, lift.indexOf('speed: 20 mm/s')).split('\n').length;
    expect(speed?.terms.find((term) => term.id === 'motion.speed')?.places).toEqual([{ path: 'lift.machine.yaml', line, column: expect.any(Number) as number }]);
  });

  it('not computable are left out, counted, and shown with what they lack', async () => {
    folder.write('bare/bare.machine.yaml', twoErrors);
    const few = await run('figures', 'bare');
    expect(few.out).toMatch(/^ {2}\d+ more figures are not computable; --all shows what they lack\.$/m);
    const { out } = await run('figures', 'bare', '--all');
    expect(out).toMatch(/screw\.turning-speed +n +missing: .*screw\.lead/);
    const all = (JSON.parse((await run('figures', 'bare', '--all', '--format', 'json')).out) as Figures).files[0]?.figures ?? [];
    const computed = (JSON.parse((await run('figures', 'bare', '--format', 'json')).out) as Figures).files[0]?.figures ?? [];
    expect(computed.every((figure) => figure.state === 'computed')).toBe(true);
    expect(all.length - computed.length).toBe(Number(/(\d+) more/.exec(few.out)?.[1]));
  });

  it('one by one unfold down to the lines of the file', async () => {
    const { out, status } = await run('figures', '--figure', 'screw.turning-speed', 'lift.machine.yaml');
    expect(status).toBe(0);
    const line = lift.slice(0, lift.indexOf('speed: 20 mm/s')).split('\n').length;
    expect(out).toContain('Turning speed, n  screw.turning-speed');
    expect(out).toMatch(/^ {2}value {6}150 rpm$/m);
    expect(out).toMatch(/^ {2}in SI {6}15\.71 rad\/s$/m);
    expect(out).toMatch(new RegExp(`v = 20 mm/s {3}Speed\\n +written on line ${line}$`, 'm'));
    expect(out).toMatch(/l = 8 mm {3}Lead\n +standard size Tr8x8\(P2\)/);
  });

  it('that are misspelt get a hint', async () => {
    const { err, status } = await run('figures', '--figure', 'turning-speed', 'lift.machine.yaml');
    expect(status).toBe(2);
    expect(err).toContain('Near it: screw.turning-speed');
  });
});

describe('two runs', () => {
  it.each([['check', 'human'], ['check', 'lines'], ['check', 'json'], ['figures', 'human'], ['figures', 'json']])('of %s --format %s are equal byte by byte', async (command, format) => {
    const [a, b] = [await run(command, '--format', format, '.'), await run(command, '--format', format, 'stock.parts.yaml', '.', 'slip.machine.yaml')];
    expect(a.out.length).toBeGreaterThan(100);
    expect(b.out).toBe(a.out);
    expect(b.err).toBe(a.err);
    expect(a.out).not.toContain(folder.path);
    expect(a.out).not.toContain('\r');
  });
});

describe('the report for people', () => {
  it('is within 80 columns, for every base machine', async () => {
    for (const base of ['lift', 'ball-lift', 'router']) {
      folder.write(`wide/${base}.machine.yaml`, yamlOf(machineWith(base, { 'screw.unsupported-length': '900 mm', 'motion.speed': '80 mm/s' })));
    }
    for (const args of [['check', 'wide'], ['figures', 'wide', '--all'], ['figures', 'wide', '--figure', 'screw.whirl-use']]) {
      const { out } = await run(...args);
      const lines = out.split('\n').filter((line) => !/Exit status/.test(line));
      for (const line of lines) expect([...line].length, line).toBeLessThanOrEqual(80);
    }
  });

  it('has no colour when it is not a terminal, unless asked', async () => {
    expect((await run('check', 'slip.machine.yaml')).out).not.toContain('\u001b');
    expect((await run('check', 'slip.machine.yaml', '--color', 'always')).out).toContain('\u001b[31merror');
    expect((await axiswright(['check', 'slip.machine.yaml', '--color', 'always'], { folder: folder.path, env: { NO_COLOR: '1' } })).out).not.toContain('\u001b');
  });
});
