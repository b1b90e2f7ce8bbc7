import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { check, figures } from '../../server/src/library/library.ts';
import { axiswright, Folder, oneHint, quiet, root, twoErrors } from '../command-line/support.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

vi.setConfig({ testTimeout: 60_000 }); // processes, on machines that do other things too

const lift = yamlOf(machineWith('lift', { brake: null, 'screw.size': 'Tr8x8(P2)', 'screw.speed-limit': '125 rpm', 'motion.speed': '20 mm/s' }));

describe('check', () => {
  it('says the same as the command line', async () => {
    const folder = new Folder({ 'lift.machine.yaml': lift });
    const { out } = await axiswright(['check', '--format', 'json'], { folder: folder.path });
    const [file] = (JSON.parse(out) as { readonly files: readonly { readonly findings: readonly { readonly code: string; readonly severity: string; readonly message: string; readonly range: { readonly start: object; readonly end: object }; readonly fixes: readonly { readonly title: string }[] }[] }[] }).files;
    const told = check(lift, { name: 'lift.machine.yaml', fixes: true }).findings.map(({ code, severity, message, place, fixes }) => ({ code, severity, message, range: { start: place.start, end: place.end }, fixes: fixes.map(({ title }) => title) }));
    expect(told).toEqual(file?.findings.map(({ code, severity, message, range, fixes }) => ({ code, severity, message, range, fixes: fixes.map(({ title }) => title) })));
    expect(told.some(({ fixes }) => fixes.length > 0)).toBe(true);
    folder.remove();
  });

  it('reads part lists and settings that it is given, and nothing else', () => {
    const using = twoErrors.replace('machine: Slip', 'machine: Slip\nuses: ["../lists/my stock.parts.yaml"]');
    const codes = (result: ReturnType<typeof check>): readonly string[] => result.findings.map(({ code }) => code);
    const list = 'description-version: 1\nparts:\n  lost: { kind: stepper, holding-torque: 1 N·m }\n';
    expect(codes(check(using, { name: 'machines/a.machine.yaml' }))).toContain('part-list-missing');
    expect(codes(check(using, { name: 'machines/a.machine.yaml', partLists: { '../lists/my stock.parts.yaml': list } }))).not.toContain('part-list-missing');
    expect(codes(check(twoErrors, { settings: 'part-lists: [stock.parts.yaml]\n', partLists: { 'stock.parts.yaml': list } })).length).toBeLessThan(codes(check(twoErrors)).length);
    expect(codes(check(lift))).toContain('screw-too-fast-for-its-maker');
    expect(check('checks:\n  nonsense: { severity: off }\n', { name: 'axiswright.yaml' }).findings).toMatchObject([{ code: 'check-unknown', place: { file: 'axiswright.yaml', start: { line: 2, column: 3 } } }]);
  });

  it('heeds what is accepted, and until when', () => {
    const text = `${lift}\naccepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: measured, by: R. Okafor, until: 2027-06-30 }\n`;
    const severity = (today?: string): string | undefined => check(text, today === undefined ? {} : { today }).findings.find(({ code }) => code === 'screw-too-fast-for-its-maker')?.severity;
    expect([severity(), severity('2027-06-30'), severity('2027-07-01')]).toEqual(['information', 'information', 'warning']);
    expect(check(text).findings.find(({ accepted }) => accepted)).toMatchObject({ accepted: { reason: 'measured', by: 'R. Okafor', until: '2027-06-30', severity: 'warning' } });
  });

  it('gives edits that can be made as they are', () => {
    const cured = check(lift, { fixes: true }).findings.find(({ code, fixes }) => code === 'screw-too-fast-for-its-maker' && fixes.length > 0);
    const edits = [...(cured?.fixes[0]?.edits ?? [])].sort((a, b) => b.place.start.offset - a.place.start.offset);
    const text = edits.reduce((changed, { place, text: put }) => changed.slice(0, place.start.offset) + put + changed.slice(place.end.offset), lift);
    expect(text).not.toBe(lift);
    expect(check(text).findings.map(({ code }) => code)).not.toContain('screw-too-fast-for-its-maker');
  });

  it('answers whatever text it is given, and refuses what is none', () => {
    for (const text of ['', '\u0000', '['.repeat(5000), 'a: &a [*a]', quiet, oneHint]) expect(Array.isArray(check(text).findings)).toBe(true);
    for (const wrong of [undefined, null, 1, Buffer.from('x')]) expect(() => check(wrong as unknown as string)).toThrow(TypeError);
    expect(() => check(quiet, { today: '1 May' })).toThrow(TypeError);
    expect(() => check(quiet, { partLists: { x: 1 } as unknown as Record<string, string> })).toThrow(TypeError);
    expect(() => check(quiet, { name: 'folder/' })).toThrow(TypeError);
  });

  it('is pure: the same again, plain data that can be cloned', () => {
    expect(check(lift, { fixes: true })).toEqual(check(lift, { fixes: true }));
    expect(JSON.parse(JSON.stringify(check(lift, { fixes: true })))).toEqual(structuredClone(check(lift, { fixes: true })));
    expect(structuredClone(figures(lift))).toEqual(figures(lift));
  });
});

describe('figures', () => {
  it('hold values in SI, and lead to their entries', () => {
    const turning = figures(lift, { name: 'lift.machine.yaml' }).figures.find(({ id }) => id === 'screw.turning-speed');
    // 20 mm/s with a lead of 8 mm is 2.5 turns a second, 2π · 2.5 = 15.708 rad/s: hand calculation.
    expect(turning).toMatchObject({ subject: 'axes/lift/drive', state: 'computed', siUnit: 'rad/s', value: { nominal: expect.closeTo(15.708, 3) as number } });
    const speed = turning?.terms.find(({ id }) => id === 'motion.speed');
    const line = lift.slice(0, lift.indexOf('20 mm/s')).split('\n').length;
    expect(speed?.places).toMatchObject([{ file: 'lift.machine.yaml', line }]);
    expect(figures('description-version: 1\nparts: {}\n', { name: 'a.parts.yaml' }).figures).toEqual([]);
  });
});

describe('the package', () => {
  const project = new Folder();
  afterAll(() => project.remove());
  const inside = (...path: string[]): string => join(project.path, ...path);

  beforeAll(async () => {
    // Packed as npm packs it, with the library freshly built, and unpacked where a project has its packages.
    const source = new Folder({ 'secret.ts': 'x', 'dist/client-node.js': '' });
    for (const name of ['package.json', '.npmignore', 'README.md', 'LICENSE']) copyFileSync(join(root, name), join(source.path, name));
    const tool = join(root, 'server', 'tools', 'build.mjs');
    const { buildLibrary } = (await import(tool)) as { readonly buildLibrary: (outdir: string) => Promise<void> };
    await buildLibrary(join(source.path, 'dist'));
    mkdirSync(inside('node_modules', 'axiswright'), { recursive: true });
    execFileSync('npm', ['pack', '--silent', '--ignore-scripts', '--pack-destination', project.path], { cwd: source.path });
    execFileSync('tar', ['-xzf', inside('axiswright-0.1.0.tgz'), '--strip-components=1', '-C', inside('node_modules', 'axiswright')]);
    source.remove();
  }, 60_000);

  const asked = `{ path: '2', findings: check(text).findings.length, figures: figures(text).figures.length > 100 }`;
  const run = (file: string, code: string): string => {
    writeFileSync(inside(file), code);
    return execFileSync(process.execPath, [file], { cwd: project.path, encoding: 'utf8' });
  };

  it('can be imported and required, and needs no other package', () => {
    writeFileSync(inside('lift.txt'), lift);
    const read = `readFileSync('lift.txt', 'utf8')`;
    const expected = `${JSON.stringify({ path: '2', findings: check(lift).findings.length, figures: true })}\n`;
    expect(run('a.mjs', `import { readFileSync } from 'node:fs';\nimport { check, figures } from 'axiswright';\nconst text = ${read};\nconsole.log(JSON.stringify(${asked}));`)).toBe(expected);
    expect(run('a.cjs', `const { readFileSync } = require('node:fs');\nconst { check, figures } = require('axiswright');\nconst text = ${read};\nconsole.log(JSON.stringify(${asked}));`)).toBe(expected);
  });

  it('is typed, for both kinds of module', () => {
    const code = `import { check, figures, type Finding, type Figure } from 'axiswright';\nconst findings: readonly Finding[] = check('', { partLists: { 'a.parts.yaml': '' }, today: '2027-01-01' }).findings;\nconst first: Figure | undefined = figures('').figures[0];\nconst severity: 'error' | 'warning' | 'information' | 'hint' | undefined = findings[0]?.severity;\n// @ts-expect-error -- a text is a string, and the types say so\ncheck(1);\nexport { severity, first };\n`;
    writeFileSync(inside('a.mts'), code);
    writeFileSync(inside('a.cts'), code);
    const said = execFileSync(process.execPath, [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '--noEmit', '--strict', '--exactOptionalPropertyTypes', '--skipLibCheck', '--module', 'nodenext', '--target', 'es2022', 'a.mts', 'a.cts'], { cwd: project.path, encoding: 'utf8' });
    expect(said).toBe('');
  });

  it('holds nothing that is not named', () => {
    const held = execFileSync('tar', ['-tzf', inside('axiswright-0.1.0.tgz')], { encoding: 'utf8' }).trim().split('\n').sort();
    expect(held).toEqual(['package/LICENSE', 'package/README.md', 'package/dist/library.d.ts', 'package/dist/library.js', 'package/package.json'].sort());
  });
});
