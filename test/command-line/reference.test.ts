import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allChecks } from '../../server/src/checks/registry.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { problemCodes } from '../../server/src/language/problem-codes.ts';
import { nameProblemCodes } from '../../server/src/machine/name-problem-codes.ts';
import { hasPage, page, pageIds } from '../../server/src/services/pages.ts';
import { referenceFiles } from '../../server/src/services/reference.ts';
import { root } from './support.ts';

describe('pages', () => {
  it('exist for every check, every problem and every figure, under one identifier each', () => {
    const ids = pageIds().map((one) => one.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of [...allChecks().map((check) => check.id), ...Object.keys(problemCodes), ...Object.keys(nameProblemCodes), ...allFigures().figures.map((figure) => figure.id)]) {
      expect(ids).toContain(id);
      expect(page(id), id).toMatch(/^# \S.*\n\n`/);
      expect(hasPage(id)).toBe(true);
    }
  });

  it('do not exist for what is none', () => {
    for (const id of ['nonsense', '', '__proto__', 'constructor', 'toString']) {
      expect(page(id)).toBeUndefined();
      expect(hasPage(id)).toBe(false);
    }
  });

  it('of a check say when, why, on what the limit rests, and what to do', () => {
    for (const check of allChecks()) {
      const text = page(check.id) ?? '';
      for (const heading of ['When it is reported', 'What goes wrong', 'Where the limit comes from', 'What to do', 'Cases']) expect(text, check.id).toMatch(new RegExp(`^## ${heading}`, 'm'));
      for (const caution of check.cautions ?? []) expect(text, `${check.id}: ${caution}`).toContain('## Cautions');
    }
  });

  it('of a check show the limit in its unit, and its cases', () => {
    const text = page('screw-too-fast-for-its-maker') ?? '';
    expect(text).toContain('| warning | turning speed `screw.turning-speed` (n) is above');
    expect(text).toContain('`screw.speed-limit: 125 rpm`');
  });

  it('of a figure hold its formula, unit and terms', () => {
    const text = page('screw.turning-speed') ?? '';
    expect(text).toContain('`n = v / l`');
    expect(text).toContain('rpm (SI: rad/s)');
    expect(text).toContain('`motion.speed`');
    expect(text).toContain('`screw-too-fast-for-its-maker`');
  });
});

describe('the reference', () => {
  it('is the same each time', () => {
    expect([...referenceFiles()]).toEqual([...referenceFiles()]);
  });

  it('names no machine path and no time', () => {
    for (const [path, text] of referenceFiles()) {
      expect(text, path).not.toContain(root.replace(/\/$/, ''));
      expect(text, path).not.toContain('undefined');
      expect(text, path).not.toContain('[object Object]');
    }
  });

  it('has a page for each check and problem, and links that lead to a page', () => {
    const files = referenceFiles();
    const links = [...(files.get('README.md') ?? '').matchAll(/\]\(([^)]+)\)/g)].map((match) => match[1] ?? '');
    expect(links.length).toBeGreaterThan(50);
    for (const link of links) expect(files.has(link), link).toBe(true);
    for (const { id, kind } of pageIds()) if (kind !== 'figure') expect(links).toContain(`checks/${id}.md`);
  });

  it('describes every key of the schema, and what stands in for it', () => {
    const keys = referenceFiles().get('keys.md') ?? '';
    const schema = readFileSync(join(root, 'schemas/machine.schema.json'), 'utf8');
    const names = new Set<string>();
    JSON.parse(schema, (key, value: unknown) => {
      if (key === 'properties' && typeof value === 'object' && value !== null) Object.keys(value).forEach((name) => names.add(name));
      return value;
    });
    expect(names.size).toBeGreaterThan(80);
    for (const name of names) expect(keys, name).toContain(`\`${name}\``);
    expect(keys).toContain('| `gravity` | Where it is unusual. | an acceleration in `mm/s²`, `m/s²`, `in/s²`, such as `9.81 m/s²` | 9.81 m/s²');
    expect(keys).toContain('## parts.NAME (kind: stepper)');
    expect(keys).toContain('The same entries as in `axes.NAME.drive.screw`.');
  });

  it('as committed is up to date: npm run reference writes it', () => {
    const { status, stderr } = spawnSync(process.execPath, ['server/tools/write-reference.mjs', '--check'], { cwd: root, encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  }, 30_000);
});
