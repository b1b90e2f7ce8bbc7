import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { sampleGantry, sampleLayout, sampleMachine } from '../../server/src/services/sample-machine.ts';
import { axiswright, root } from './support.ts';

vi.setConfig({ testTimeout: 30_000 });

const read = (name: string): string => readFileSync(join(root, name), 'utf8');

/** Blocks of code that a comment `<!-- LABEL: WHAT -->` stands before. */
function blocks(text: string, label: string): readonly { readonly what: string; readonly code: string }[] {
  return [...text.matchAll(new RegExp(`^( *)<!-- ${label}: (.+?) -->\\n\\1\`\`\`\\w*\\n([\\s\\S]*?)\\1\`\`\`$`, 'gm'))].map(([, indent = '', what = '', code = '']) => ({
    what,
    code: code.split('\n').map((line) => line.slice(indent.length)).join('\n'),
  }));
}

describe('the guides tell the truth', () => {
  it('DEVELOPERS.md shows files as they are', () => {
    const shown = blocks(read('DEVELOPERS.md'), 'file');
    expect(shown.map(({ what }) => what)).toHaveLength(3);
    for (const { what, code } of shown) expect(code, what).toBe(read(what));
  });

  it('README.md shows real output: npm run reference writes it', async () => {
    const shown = blocks(read('README.md'), 'output of');
    expect(shown.length).toBeGreaterThan(0);
    for (const { what, code } of shown) {
      const { out } = await axiswright((what.split(', ')[0] ?? '').split(' '), { folder: root });
      expect(`\n${out}`).toContain(`\n${code.trimEnd()}\n`);
    }
  });

  it('README.md shows a machine without error or warning, and the page of keys the same one', async () => {
    const shown = blocks(read('README.md'), 'machine');
    expect(shown.map(({ code }) => code.trimEnd())).toEqual([sampleMachine.trimEnd()]);
    const { status, out } = await axiswright(['check', '-', '--fail-on', 'warning'], { folder: root, input: sampleMachine });
    expect({ status, out }).toMatchObject({ status: 0 });
  });

  it('the page of keys shows a gantry, and two axes on crossed belts, without error or warning', async () => {
    const keys = read('server/docs/keys.md');
    expect(keys).toContain(sampleGantry);
    expect(keys).toContain(sampleLayout);
    const withoutDrives = sampleGantry.replace(/^ {4}drive:\n(?: {6}.*\n)+/gm, '').replace(/^parts:/m, `${sampleLayout}\nparts:`);
    expect(withoutDrives).not.toContain('rack:');
    for (const input of [sampleGantry, withoutDrives]) {
      const { status, out } = await axiswright(['check', '-', '--fail-on', 'warning'], { folder: root, input });
      expect({ status, out }).toMatchObject({ status: 0 });
    }
  });

  it.each(['README.md', 'DEVELOPERS.md'])('%s names files that exist', (name) => {
    const text = read(name);
    const named = [...text.matchAll(/`((?:server|client|test|schemas|examples|\.ci)\/[\w./-]*\w\/?)`/g), ...text.matchAll(/\]\(((?!https?:)[\w./-]+)\)/g)].map((match) => match[1] ?? '');
    expect(named.length).toBeGreaterThan(5);
    // SCOPE and NAME stand for what the reader chooses; artefacts are there after a run only.
    for (const path of named.filter((one) => !/SCOPE|NAME|artefacts/.test(one))) expect(existsSync(join(root, path)), path).toBe(true);
  });

  it('the README has the exit statuses of the help', async () => {
    const { out } = await axiswright(['--help'], { folder: root });
    const readme = read('README.md').replace(/\s+/g, ' ');
    const statuses = [...out.slice(out.indexOf('Exit status:')).matchAll(/^ {2}(\d) {2}(.*)/gm)].map(([, status, words = '']) => [status, words.replace(/ \(--fail-on\)/, '').split(',')[0] ?? '']);
    expect(statuses.map(([status]) => status)).toEqual(['0', '1', '2']);
    for (const [status, words = ''] of statuses) expect(readme).toContain(`| ${status} | ${words}`);
  });
});
