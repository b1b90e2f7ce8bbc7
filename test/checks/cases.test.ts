import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { analyse } from '../../server/src/checks/analysis.ts';
import { allChecks } from '../../server/src/checks/registry.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { nodeAt } from '../../server/src/language/syntax-tree.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** A check is a folder of three: declaration, page, table of cases. This runs every table. */
interface Case {
  readonly name: string;
  readonly base?: string;
  readonly with?: Readonly<Record<string, unknown>>;
  readonly severity?: string;
  /** Pieces of the message, each with the number that a source or a hand calculation gives. */
  readonly says?: readonly string[];
  /** The text that is underlined. */
  readonly at?: string;
}

const folder = fileURLToPath(new URL('../../server/src/checks/', import.meta.url));
const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name);

describe('every check', () => {
  it.each(folders)('%s is a folder of declaration, page and table, named alike', (name) => {
    for (const file of ['check.ts', 'page.md', 'cases.yaml']) expect(existsSync(`${folder}${name}/${file}`), file).toBe(true);
    expect(allChecks().map((check) => check.id)).toContain(name);
  });

  it('has an id of its own', () => {
    const ids = allChecks().map((check) => check.id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

for (const name of folders.filter((candidate) => existsSync(`${folder}${candidate}/cases.yaml`))) {
  const table = parse(readFileSync(`${folder}${name}/cases.yaml`, 'utf8')) as { base: string; passes: readonly Case[]; fails: readonly Case[] };
  const run = (row: Case): readonly { readonly severity: string; readonly message: string; readonly at: string }[] => {
    const text = yamlOf(machineWith(row.base ?? table.base, row.with));
    const document = readDocument('file:///case.machine.yaml', text);
    return analyse(document, []).findings.filter((finding) => finding.check === name).map((finding) => {
      const node = nodeAt(document.root, finding.place.path);
      return { severity: finding.severity, message: finding.message, at: node ? text.slice(node.span.start, node.span.end) : '' };
    });
  };

  describe(name, () => {
    it('has cases that pass and cases that fail', () => {
      expect(table.passes.length).toBeGreaterThan(0);
      expect(table.fails.length).toBeGreaterThan(0);
    });
    it.each(table.passes)('passes: $name', (row) => {
      expect(run(row)).toEqual([]);
    });
    it.each(table.fails)('fails: $name', (row) => {
      const findings = run(row);
      expect(findings).toHaveLength(1);
      const [finding] = findings;
      expect(finding?.severity, finding?.message).toBe(row.severity);
      for (const piece of row.says ?? []) expect(finding?.message).toContain(piece);
      if (row.at !== undefined) expect(finding?.at.trim()).toContain(row.at);
      expect(finding?.message.length, finding?.message).toBeLessThanOrEqual(240);
    });
  });
}
