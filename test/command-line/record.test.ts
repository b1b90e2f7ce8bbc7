import { chmodSync, existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { scratch } from './scratch.ts';
import { axiswright, type Folder } from './support.ts';

vi.setConfig({ testTimeout: 60_000 });

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));
const recordAt = (folder: Folder, name = 'lift'): string => readFileSync(join(folder.path, `${name}.record.md`), 'utf8');

describe('axiswright record', () => {
  it('writes the record beside the description and says so; a current one is not touched', async () => {
    const folder = scratch({ 'lift.machine.yaml': lift() });
    const first = await axiswright(['record'], { folder: folder.path });
    expect(first).toMatchObject({ status: 0, err: '' });
    expect(first.out).toContain('lift.record.md');
    const { mtimeMs, ino } = statSync(join(folder.path, 'lift.record.md'));
    expect((await axiswright(['record', 'lift.machine.yaml'], { folder: folder.path })).status).toBe(0);
    expect(statSync(join(folder.path, 'lift.record.md'))).toMatchObject({ mtimeMs, ino });
    // Nothing is left beside it.
    expect(readdirSync(folder.path).sort()).toEqual(['lift.machine.yaml', 'lift.record.md']);
  });

  it('is the same under another clock, language and folder', async () => {
    const [one, other] = [scratch({ 'lift.machine.yaml': lift() }), scratch({ 'deep/er/lift.machine.yaml': lift() })];
    await axiswright(['record'], { folder: one.path, env: { TZ: 'UTC', LANG: 'C', SOURCE_DATE_EPOCH: '0' } });
    await axiswright(['record'], { folder: other.path, env: { TZ: 'Pacific/Auckland', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8', SOURCE_DATE_EPOCH: '4102444800' } });
    expect(readFileSync(join(other.path, 'deep/er/lift.record.md'), 'utf8')).toBe(recordAt(one));
  });

  it('--check writes nothing: 0 where it is current, 1 with the first lines that differ where it is not, or where there is none', async () => {
    const folder = scratch({ 'lift.machine.yaml': lift() });
    const none = await axiswright(['record', '--check'], { folder: folder.path });
    expect(none.status).toBe(1);
    expect(existsSync(join(folder.path, 'lift.record.md'))).toBe(false);
    await axiswright(['record'], { folder: folder.path });
    expect((await axiswright(['record', '--check'], { folder: folder.path })).status).toBe(0);
    folder.write('lift.machine.yaml', lift({ 'motion.acceleration': '150 mm/s²' }));
    const before = recordAt(folder);
    const stale = await axiswright(['record', '--check'], { folder: folder.path });
    expect(stale.status).toBe(1);
    expect(`${stale.out}${stale.err}`).toMatch(/lift\.record\.md is not current: line \d+/);
    expect(recordAt(folder)).toBe(before);
  });

  it('of standard input is printed', async () => {
    const folder = scratch({});
    const run = await axiswright(['record', '-'], { folder: folder.path, input: lift() });
    expect(run.status).toBe(0);
    expect(run.out).toContain('design record');
    expect(readdirSync(folder.path)).toEqual([]);
  });

  it('does not overwrite a file that it did not write', async () => {
    const folder = scratch({ 'lift.machine.yaml': lift(), 'lift.record.md': '# My own notes\n' });
    const run = await axiswright(['record'], { folder: folder.path });
    expect(run.status).toBe(2);
    expect(run.err).toContain('lift.record.md');
    expect(recordAt(folder)).toBe('# My own notes\n');
  });

  it('keeps the old record whole where the new one cannot be written, and writes the others', async () => {
    const folder = scratch({ 'a/lift.machine.yaml': lift(), 'b/lift.machine.yaml': lift() });
    writeFileSync(join(folder.path, 'a/lift.record.md'), '');
    // A folder in its place cannot be replaced by anyone, not even by the superuser.
    const blocked = scratch({ 'lift.machine.yaml': lift(), 'lift.record.md/inside': 'x' });
    const run = await axiswright(['record', '.'], { folder: blocked.path });
    expect(run.status).toBe(2);
    expect(run.err).toContain('lift.record.md');
    expect(readdirSync(blocked.path).sort()).toEqual(['lift.machine.yaml', 'lift.record.md']);
  });

  it.skipIf(process.getuid?.() === 0)('says clearly that a folder may not be written to', async () => {
    const folder = scratch({ 'lift.machine.yaml': lift() });
    chmodSync(folder.path, 0o555);
    const run = await axiswright(['record'], { folder: folder.path });
    chmodSync(folder.path, 0o755);
    expect(run.status).toBe(2);
    expect(run.err).toContain('may not be written');
  });

  it('says which option is wrong and which file is missing', async () => {
    const folder = scratch({ 'lift.machine.yaml': lift() });
    expect((await axiswright(['record', '--chek'], { folder: folder.path })).status).toBe(2);
    const missing = await axiswright(['record', 'lfit.machine.yaml'], { folder: folder.path });
    expect(missing.status).toBe(2);
    expect(missing.err).toContain('lfit.machine.yaml');
  });
});
