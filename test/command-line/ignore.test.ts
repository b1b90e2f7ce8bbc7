import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findFiles } from '../../server/src/command-line/find-files.ts';
import { scratch } from './scratch.ts';
import { axiswright, type Folder, quiet } from './support.ts';

function found(at: Folder, given: readonly string[] = ['.'], from = '.', ignore = true): readonly string[] {
  const current = join(at.path, from);
  return findFiles(given, current, { ignore }).files.map((path) => path.slice(at.path.length + 1));
}

const machines = (...paths: readonly string[]): Readonly<Record<string, string>> => Object.fromEntries(paths.map((path) => [`${path}.machine.yaml`, quiet]));

describe('what is ignored', () => {
  it('is named in .gitignore, in .axiswrightignore and in the settings; files named themselves are read all the same', () => {
    const at = scratch({
      ...machines('a', 'git', 'own', 'set', 'drafts/b', 'keep/drafts/c'), '.gitignore': '# a comment\ngit.machine.yaml\n/drafts/\n', '.axiswrightignore': 'own.*\n', 'axiswright.yaml': 'ignore: ["set.*"]\n',
    });
    expect(found(at)).toEqual(['a.machine.yaml', 'keep/drafts/c.machine.yaml']);
    expect(found(at, ['**/*.machine.yaml'])).toEqual(['a.machine.yaml', 'keep/drafts/c.machine.yaml']);
    expect(found(at, ['own.machine.yaml', 'drafts/b.machine.yaml'])).toEqual(['drafts/b.machine.yaml', 'own.machine.yaml']);
    expect(found(at, ['.'], '.', false)).toHaveLength(6);
  });

  it('can be taken back in a file that counts before, or in a deeper folder; not from inside a folder that is ignored', () => {
    const at = scratch({
      ...machines('one', 'two', 'sub/one', 'gone/x'), '.gitignore': '*.machine.yaml\ngone/\n', '.axiswrightignore': '!one.machine.yaml\n', 'sub/.gitignore': '!*.machine.yaml\n', 'gone/.gitignore': '!x.machine.yaml\n',
    });
    expect(found(at)).toEqual(['one.machine.yaml', 'sub/one.machine.yaml']);
  });

  it('counts from the top of the repository, also when one starts below; a folder named itself is searched', () => {
    const at = scratch({ ...machines('sub/a', 'sub/built/b', 'built/c'), '.gitignore': 'built/\n' });
    mkdirSync(join(at.path, '.git'));
    expect(found(at, ['.'], 'sub')).toEqual(['sub/a.machine.yaml']);
    expect(found(at, ['built'])).toEqual(['built/c.machine.yaml']);
    expect(found(at, ['built', 'sub'])).toEqual(['built/c.machine.yaml', 'sub/a.machine.yaml']);
  });

  it('agrees with git', () => {
    const paths = ['a', 'b/a', 'b/c/a', 'b/c/d', 'doc/x', 'b/doc/x', 'sp ace', '#hash', '!bang', 'x1', 'x2', 'xy'];
    const at = scratch({ ...machines(...paths), '.gitignore': 'b/c/\n!b/c/d.machine.yaml\n/doc\n\\#hash*\n\\!bang*\nx[0-9].*\n**/c/a*\nsp\\ ace.machine.yaml\ntrailing   \n', 'b/.gitignore': '/a.machine.yaml\n' });
    execFileSync('git', ['init', '-q'], { cwd: at.path });
    const listed = execFileSync('git', ['-c', 'core.quotepath=off', 'ls-files', '-o', '--exclude-standard', '*.machine.yaml'], { cwd: at.path, encoding: 'utf8' });
    expect(found(at)).toEqual(listed.trim().split('\n').map((line) => line.replace(/^"(.*)"$/, '$1')).sort());
  });

  it('when all of it is, that is said, and the status tells', async () => {
    const at = scratch({ ...machines('a'), '.axiswrightignore': '*\n' });
    expect(await axiswright(['check'], { folder: at.path })).toMatchObject({ status: 2, err: 'No *.machine.yaml or *.parts.yaml is in the folder ".", however deep; something was ignored, which --no-ignore takes in.\n' });
    expect(await axiswright(['check', '--no-ignore'], { folder: at.path })).toMatchObject({ status: 0, err: '' });
  });

  it('a file of patterns that would take forever to try, or that is no text, is told of and left out', async () => {
    const at = scratch({ [`${'a'.repeat(200)}.machine.yaml`]: quiet, '.gitignore': `${'*a'.repeat(40)}b\n`, '.axiswrightignore': '\u0000' });
    const since = performance.now();
    const { status, err } = await axiswright(['check'], { folder: at.path });
    expect(performance.now() - since).toBeLessThan(8000);
    expect(status).toBe(2);
    expect(err).toBe('.gitignore has a pattern in line 1 with more stars than can be tried; it is left out.\n.axiswrightignore is not a text in UTF-8.\n'.split('\n').sort().join('\n').trim() + '\n');
  });
});
