// What the manifest promises is there: a command that nobody registers or a string that nobody translates fails silently in the editor.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const manifest = JSON.parse(read('package.json')) as {
  icon: string;
  l10n: string;
  contributes: {
    commands: { command: string; title: string }[];
    languages: { id: string; configuration: string }[];
    grammars: { language: string; path: string }[];
    configuration: { properties: Record<string, { description: string; scope?: string }> };
    configurationDefaults: Record<string, Record<string, unknown>>;
  };
};
const sources = readdirSync(join(root, 'client/src')).map((file) => read(`client/src/${file}`)).join('\n');

describe('the manifest', () => {
  test('contributes one language of its own, with grammar, configuration and editor defaults', () => {
    const [language] = manifest.contributes.languages;
    expect(manifest.contributes.languages).toHaveLength(1);
    expect(language?.id).toBe('axiswright-machine');
    expect(manifest.contributes.grammars.map((grammar) => grammar.language)).toEqual([language?.id]);
    for (const path of [manifest.icon, language?.configuration ?? '', manifest.contributes.grammars[0]?.path ?? '']) expect(existsSync(join(root, path)), path).toBe(true);
    expect(Object.keys(manifest.contributes.configurationDefaults)).toEqual([`[${language?.id}]`]);
  });

  test('every command is registered in the client', () => {
    for (const { command } of manifest.contributes.commands) expect(sources).toContain(`registerCommand('${command}'`);
  });

  test('has at most twelve settings, each per resource and each read by the server', () => {
    const settings = Object.entries(manifest.contributes.configuration.properties);
    const reader = read('server/src/protocol/settings.ts');
    expect(settings.length).toBeLessThanOrEqual(12);
    for (const [name, { scope }] of settings) {
      const [section, ...path] = name.split('.');
      expect(reader).toContain(`section = '${section}'`);
      expect(reader).toContain(path.map((part) => `'${part}'`).join(', '));
      expect(scope, name).toBe('resource');
    }
  });

  test('every %string% of the manifest is in package.nls.json, and none more', () => {
    const used = new Set([...read('package.json').matchAll(/"%([^%"]+)%"/g)].map((match) => match[1]));
    expect([...used].sort()).toEqual(Object.keys(JSON.parse(read('package.nls.json')) as object).sort());
  });

  test('every string that the client shows is in the bundle for translators, and none more', () => {
    const used = new Set([...sources.matchAll(/l10n\.t\(\s*'((?:[^'\\]|\\.)*)'/g)].map((match) => match[1]));
    expect(used.size).toBeGreaterThan(0);
    expect([...used].sort()).toEqual(Object.keys(JSON.parse(read(join(manifest.l10n, 'bundle.l10n.json'))) as object).sort());
  });
});
