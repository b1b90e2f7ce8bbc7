import { mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { writeRecord } from '../../server/src/command-line/record-file.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { scratch } from './scratch.ts';
import { axiswright, type Folder } from './support.ts';

vi.setConfig({ testTimeout: 30_000 });

const lift = yamlOf(machineWith('lift', { 'motor.price': '14.50 EUR' }));
const folderWith = (files: Readonly<Record<string, string>> = { 'lift.machine.yaml': lift }): Folder => scratch(files);
const read = (folder: Folder, path: string): string => readFileSync(join(folder.path, path), 'utf8');

describe('the file of a record', () => {
  it('is left alone where only its line ends were turned', async () => {
    const folder = folderWith();
    await axiswright(['record'], { folder: folder.path });
    const long = new Date('2020-01-01T00:00:00Z');
    folder.write('lift.record.md', read(folder, 'lift.record.md').replaceAll('\n', '\r\n'));
    utimesSync(join(folder.path, 'lift.record.md'), long, long);
    expect((await axiswright(['record'], { folder: folder.path })).out).toBe('lift.record.md is current.\n');
    expect(statSync(join(folder.path, 'lift.record.md')).mtime).toEqual(long);
  });

  it('that is not current is told of in one line: its first lines that differ, the content line apart', async () => {
    const folder = folderWith();
    await axiswright(['record'], { folder: folder.path });
    folder.write('lift.machine.yaml', lift.replace('14.50 EUR', '15 EUR'));
    const line = read(folder, 'lift.record.md').split('\n').findIndex((one) => one.includes('| lift-motor |')) + 1;
    const { status, out } = await axiswright(['record', '--check'], { folder: folder.path });
    expect(status).toBe(1);
    expect(out.trimEnd().split('\n')).toHaveLength(1);
    expect(out).toContain(`lift.record.md is not current: line ${line} reads "| lift-motor | NEMA 17 | 2 | 14.50 EUR`);
    expect(out).toContain('due is "| lift-motor | NEMA 17 | 2 | 15.00 EUR');
  });

  it('is printed instead with --stdout, the same as that of standard input', async () => {
    const folder = folderWith();
    const shown = await axiswright(['record', '--stdout', 'lift.machine.yaml'], { folder: folder.path });
    const typed = await axiswright(['record', '-', '--as', 'typed.machine.yaml'], { folder: folder.path, input: lift });
    expect(shown.out).toMatch(/^<!-- Design record/);
    expect(typed.out).toBe(shown.out);
    expect(readdirSync(folder.path)).toEqual(['lift.machine.yaml']);
  });

  it('is not written through a link', async () => {
    const folder = folderWith({ 'lift.machine.yaml': lift, 'target.md': '' });
    symlinkSync('target.md', join(folder.path, 'lift.record.md'));
    expect(await axiswright(['record'], { folder: folder.path })).toMatchObject({ status: 2, err: expect.stringContaining('lift.record.md is a link') as string });
    expect(read(folder, 'target.md')).toBe('');
  });

  it('of one description is written where another cannot be read, and part lists have none', async () => {
    const folder = folderWith({ 'lift.machine.yaml': lift, 'broken.machine.yaml': 'a\0b', 'stock.parts.yaml': 'description-version: 1\nparts: {}\n' });
    const { status, out, err } = await axiswright(['record'], { folder: folder.path });
    expect([status, out]).toEqual([2, 'lift.record.md is written.\n']);
    expect(err).toContain('broken.machine.yaml is not a text in UTF-8');
    expect(await axiswright(['record', 'stock.parts.yaml'], { folder: folder.path })).toMatchObject({ status: 2, err: 'Part lists have no record of their own.\n' });
  });

  it('stays whole, with nothing left beside it, where it cannot be written', () => {
    const folder = folderWith({ 'lift.record.md': 'old' });
    // The superuser may write everywhere, so what nobody can do stands for a read-only folder.
    expect(writeRecord(join(folder.path, 'absent', 'lift.record.md'), 'new')).toBe('cannot be written: its folder does not exist');
    // A name this long leaves no room for the name of what is written beside it.
    expect(writeRecord(join(folder.path, `${'x'.repeat(250)}.md`), 'new')).toContain('cannot be written');
    mkdirSync(join(folder.path, 'folder.md'));
    expect(writeRecord(join(folder.path, 'folder.md'), 'new')).toMatch(/cannot|may not/);
    expect(readdirSync(folder.path).sort()).toEqual(['folder.md', 'lift.record.md']);
    expect(read(folder, 'lift.record.md')).toBe('old');
  });
});
