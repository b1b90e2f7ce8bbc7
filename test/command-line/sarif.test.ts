import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Ajv } from 'ajv';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { axiswright, Folder, quiet, root, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 30_000 }); // many processes, on machines that do other things too

/** The schema of SARIF 2.1.0 as OASIS published it, from a package that carries it. */
const schemaFile = join(dirname(createRequire(import.meta.url).resolve('@microsoft/jest-sarif')), 'schemas', 'sarif-2.1.0-rtm.5.json');

// One pattern of it has a stray bracket, which only expressions without the mark u forgive.
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
// The formats that the schema uses, as RFC 3986 and RFC 3339 have them; simplified, since all that we write are paths.
ajv.addFormat('uri', (text: string) => URL.canParse(text));
ajv.addFormat('uri-reference', (text: string) => /^(?:[A-Za-z0-9\-._~:/?#@!$&'()*+,;=]|%[0-9A-Fa-f]{2})*$/.test(text));
ajv.addFormat('date-time', (text: string) => !Number.isNaN(Date.parse(text)));
// It says that it is of draft 4. Nothing in it means something else in draft 7: it has no `exclusiveMinimum` or `exclusiveMaximum`.
const { $schema: _draft, id: _name, ...schema } = JSON.parse(readFileSync(schemaFile, 'utf8')) as Readonly<Record<string, unknown>>;
const validate = ajv.compile(schema);

interface Region {
  readonly startLine: number;
  readonly startColumn: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly charOffset: number;
  readonly charLength: number;
}
interface Artifact {
  readonly uri: string;
  readonly uriBaseId: string;
  readonly index: number;
}
interface Located {
  readonly physicalLocation: { readonly artifactLocation: Artifact; readonly region: Region };
}
interface Result {
  readonly ruleId: string;
  readonly ruleIndex: number;
  readonly level: string;
  readonly message: { readonly text: string };
  readonly locations: readonly Located[];
  readonly relatedLocations?: readonly Located[];
  readonly partialFingerprints: Readonly<Record<string, string>>;
  readonly fixes?: readonly { readonly description: { readonly text: string }; readonly artifactChanges: readonly { readonly artifactLocation: Artifact; readonly replacements: readonly { readonly deletedRegion: Region; readonly insertedContent?: { readonly text: string } }[] }[] }[];
  readonly suppressions: readonly { readonly justification: string; readonly status: string; readonly properties: { readonly severity: string } }[];
  readonly properties: { readonly severity: string };
}
interface Run {
  readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string; readonly name: string; readonly help: { readonly text: string; readonly markdown: string }; readonly defaultConfiguration?: { readonly level: string }; readonly properties: { readonly page: string; readonly basis?: string; readonly source?: string } }[] } };
  readonly results: readonly Result[];
  readonly artifacts: readonly { readonly location: { readonly uri: string } }[];
  readonly invocations: readonly { readonly executionSuccessful: boolean; readonly exitCode: number; readonly toolExecutionNotifications: readonly { readonly message: { readonly text: string } }[]; readonly toolConfigurationNotifications: readonly object[] }[];
  readonly columnKind: string;
}

/** Turns too fast for its maker, and runs down by itself. */
const lift = yamlOf(machineWith('lift', { brake: null, 'screw.size': 'Tr8x8(P2)', 'screw.speed-limit': '125 rpm', 'motion.speed': '20 mm/s' }));
const acceptedLift = `${lift}\naccepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: "its maker allows 200 rpm by letter", by: R. Okafor, until: 2999-12-31 }\n`;
const folder = new Folder({ 'lift.machine.yaml': lift, 'with accepted.machine.yaml': acceptedLift, 'slip.machine.yaml': twoErrors, 'quiet.machine.yaml': quiet, 'binary.machine.yaml': new Uint8Array([0, 255]) });
afterAll(() => folder.remove());

async function sarif(args: readonly string[], at = folder): Promise<{ readonly run: Run; readonly out: string; readonly status: number }> {
  const { out, status } = await axiswright(['check', '--format', 'sarif', ...args], { folder: at.path });
  const log = JSON.parse(out) as { readonly runs: readonly [Run] };
  expect(validate(log), JSON.stringify(validate.errors?.slice(0, 5))).toBe(true);
  return { run: log.runs[0], out, status };
}

describe('findings as SARIF', () => {
  it('follow the published schema, whatever there is to be told', async () => {
    for (const args of [['.'], ['quiet.machine.yaml'], ['slip.machine.yaml', '--no-fixes'], ['none*', 'absent.machine.yaml'], ['none*', '--allow-none'], ['-', '--as', 'a b.machine.yaml']]) {
      const { run, status } = await sarif(args);
      expect(run.invocations[0]?.exitCode).toBe(status);
      expect(run.invocations[0]?.executionSuccessful).toBe(status !== 2);
      expect(run.columnKind).toBe('utf16CodeUnits');
    }
  });

  it('point at the text by lines and by characters', async () => {
    const { run } = await sarif(['lift.machine.yaml']);
    const fast = run.results.find(({ ruleId }) => ruleId === 'screw-too-fast-for-its-maker');
    const { region, artifactLocation } = fast?.locations[0]?.physicalLocation ?? {};
    expect(artifactLocation).toMatchObject({ uri: 'lift.machine.yaml', uriBaseId: '%SRCROOT%' });
    expect(lift.slice(region?.charOffset, (region?.charOffset ?? 0) + (region?.charLength ?? 0))).toBe('125 rpm');
    const before = lift.slice(0, lift.indexOf('125 rpm'));
    expect(region).toMatchObject({ startLine: before.split('\n').length, startColumn: before.length - before.lastIndexOf('\n'), endColumn: before.length - before.lastIndexOf('\n') + 7 });
    expect(fast?.level).toBe('warning');
    expect(fast?.relatedLocations?.length).toBeGreaterThan(0);
  });

  it('bring rules with their pages, and index them and the files rightly', async () => {
    const { run } = await sarif(['.']);
    const { rules } = run.tool.driver;
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const { ruleId, ruleIndex, locations } of run.results) {
      expect(rules[ruleIndex]?.id).toBe(ruleId);
      for (const { physicalLocation: { artifactLocation } } of locations) expect(run.artifacts[artifactLocation.index]?.location.uri).toBe(artifactLocation.uri);
    }
    expect(run.artifacts.map(({ location }) => location.uri)).toEqual(['lift.machine.yaml', 'quiet.machine.yaml', 'slip.machine.yaml', 'with%20accepted.machine.yaml']);
    const rule = rules.find(({ id }) => id === 'screw-too-fast-for-its-maker');
    expect(rule).toMatchObject({ name: 'ScrewTooFastForItsMaker', defaultConfiguration: { level: 'warning' }, properties: { page: 'server/docs/checks/screw-too-fast-for-its-maker.md', basis: 'common practice', source: 'the limit written in the description' } });
    expect(rule?.help.markdown).toContain('## What goes wrong');
    expect(rule?.help.text).toContain('What goes wrong');
    expect(rule?.help.text).not.toMatch(/[#`]/);
  });

  it('bring changes that cure what they say when they are made', async () => {
    const { run } = await sarif(['lift.machine.yaml']);
    const fixed = run.results.flatMap((result) => (result.fixes ?? []).map((fix) => ({ result, fix })));
    expect(fixed.length).toBeGreaterThan(2);
    for (const { result, fix } of fixed.slice(0, 3)) {
      let text = lift;
      const [change] = fix.artifactChanges;
      for (const { deletedRegion, insertedContent } of [...(change?.replacements ?? [])].sort((a, b) => b.deletedRegion.charOffset - a.deletedRegion.charOffset)) {
        text = text.slice(0, deletedRegion.charOffset) + (insertedContent?.text ?? '') + text.slice(deletedRegion.charOffset + deletedRegion.charLength);
      }
      const { out } = await axiswright(['check', '-', '--format', 'json', '--no-fixes'], { folder: folder.path, input: text });
      const [file] = (JSON.parse(out) as { readonly files: readonly { readonly findings: readonly { readonly code: string }[] }[] }).files;
      expect(file?.findings.map(({ code }) => code), fix.description.text).not.toContain(result.ruleId);
    }
  });

  it('tell of every result whether it is suppressed, and why', async () => {
    const { run } = await sarif(['with accepted.machine.yaml']);
    for (const { suppressions, ruleId } of run.results) expect(suppressions.length).toBe(ruleId === 'screw-too-fast-for-its-maker' ? 1 : 0);
    const accepted = run.results.find(({ suppressions }) => suppressions.length > 0);
    expect(accepted).toMatchObject({ level: 'note', suppressions: [{ status: 'accepted', justification: 'its maker allows 200 rpm by letter', properties: { severity: 'warning', by: 'R. Okafor' } }] });
  });

  it('are known by marks that stay when lines move, and differ from each other', async () => {
    const moved = new Folder({ 'lift.machine.yaml': `# one\n\n# two\n${lift.replace('motion:', '# three\n    motion:')}` });
    const marks = ({ results }: Run): readonly (string | undefined)[] => results.map((result) => result.partialFingerprints['checkAtEntry/v1']);
    const [here, there] = [(await sarif(['lift.machine.yaml'])).run, (await sarif(['lift.machine.yaml'], moved)).run];
    expect(marks(here)).toEqual(marks(there));
    expect(new Set(marks(here)).size).toBe(here.results.length);
    moved.remove();
  });

  it('name what could not be read, and are the same on every run', async () => {
    const [one, two] = [await sarif(['.']), await sarif(['.', '--workers', '2'])];
    expect(one.out).toBe(two.out);
    expect(one.run.invocations[0]?.toolExecutionNotifications.map(({ message }) => message.text)).toEqual(['binary.machine.yaml is not a text in UTF-8.']);
    expect(one.out).not.toContain(folder.path);
    expect(one.out).not.toContain(root);
  });
});
