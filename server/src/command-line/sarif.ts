import { createHash } from 'node:crypto';
import { version } from '../../../package.json';
import { ruleOf, type Rule } from '../services/rules.ts';
import { jsonAt, membersOf, type FilePart, type RunDocument, type RunEnd } from './documents.ts';
import type { Failure } from './find-files.ts';
import type { FindingRow, FixRow, Severity } from './findings.ts';
import type { TextPlace } from './source-lines.ts';
import { isPattern } from './globs.ts';

/** Static Analysis Results Interchange Format (OASIS Standard, version 2.1.0). */
const schema = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/** Stands for the folder in which the program was started; where that is, is nobody's business. */
const base = '%SRCROOT%';

/** SARIF knows three levels (section 3.27.10). */
const levels: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = { error: 'error', warning: 'warning', information: 'note', hint: 'note' };

const notifications = [
  { id: 'not-checked', shortDescription: { text: 'A file that could not be checked' } },
  { id: 'nothing-matches', shortDescription: { text: 'A pattern or folder in which there is no description' } },
];

type Span = { readonly start: TextPlace & { readonly offset?: number }; readonly end: TextPlace & { readonly offset?: number } };

/** What `check --format sarif` prints. Rules are those that were broken, in the order of their first finding; files those that were looked at. */
export class SarifLog implements RunDocument {
  readonly #rules = new Map<string, number>();
  readonly #artifacts = new Map<string, { readonly index: number; readonly role: string }>();
  #results = 0;

  begin(): string {
    const members = { $schema: schema, version: '2.1.0' };
    return `{\n${membersOf(members)},\n  "runs": [\n    {\n      "results": [`;
  }

  file({ path, rows }: FilePart): string {
    if (rows === undefined) return '';
    this.#artifact(path, 'analysisTarget');
    const seen = new Map<string, number>();
    return rows.map((row) => `${this.#results++ === 0 ? '' : ','}\n        ${jsonAt(this.#result(path, row, seen), 4)}`).join('');
  }

  end({ status, sentence, failures, unmatched }: RunEnd): string {
    const failed = failures.map((failure) => this.#notification(failure));
    const closing = {
      tool: { driver: { name: 'Axiswright', version, semanticVersion: version, language: 'en', rules: [...this.#rules.keys()].map(ruleJson), notifications } },
      columnKind: 'utf16CodeUnits',
      originalUriBaseIds: { [base]: { description: { text: 'The folder in which axiswright was started.' } } },
      artifacts: [...this.#artifacts].map(([path, { role }]) => ({ location: { uri: uriOf(path), uriBaseId: base }, sourceLanguage: 'yaml', encoding: 'UTF-8', roles: [role] })),
      invocations: [{
        executionSuccessful: status !== 2,
        exitCode: status,
        exitCodeDescription: sentence,
        toolExecutionNotifications: failed,
        toolConfigurationNotifications: unmatched.map((pattern) => ({
          level: 'error', descriptor: { id: 'nothing-matches', index: 1 }, message: { text: `No *.machine.yaml or *.parts.yaml ${isPattern(pattern) ? 'matches' : 'is in'} "${pattern}".` },
        })),
      }],
    };
    const lines = Object.entries(closing).map(([name, value]) => `      ${JSON.stringify(name)}: ${jsonAt(value, 3)}`);
    return `${this.#results === 0 ? '' : '\n      '}],\n${lines.join(',\n')}\n    }\n  ]\n}\n`;
  }

  #result(path: string, row: FindingRow, seen: Map<string, number>): object {
    const { code, severity, message, cautions, related, accepted, entry, subject, certain, figure, worst, limit } = row;
    const whole = { start: { ...row.start, offset: row.span.start }, end: { ...row.end, offset: row.span.end } };
    const fixes = row.fixes.filter(({ changes }) => changes.length > 0);
    return {
      ruleId: code,
      ruleIndex: this.#rule(code),
      level: levels[severity],
      message: { text: [message, ...cautions.map((caution) => `Caution: ${caution}`)].join(' ') },
      locations: [{ ...this.#location(path, whole), ...(entry === '' ? {} : { logicalLocations: [{ fullyQualifiedName: entry, kind: 'property' }] }) }],
      ...(related.length === 0 ? {} : { relatedLocations: related.map((place, index) => ({ id: index + 1, ...this.#location(place.path, place), message: { text: place.message } })) }),
      // Nothing of it moves with lines above: the same finding at the same entry is the same.
      partialFingerprints: { 'checkAtEntry/v1': fingerprint(row, seen) },
      ...(fixes.length === 0 ? {} : { fixes: fixes.map((fix) => this.#fix(fix)) }),
      // Once a result of a run tells of suppressions, all have to (section 3.27.23).
      suppressions: accepted === undefined ? [] : [{ kind: 'inSource', status: 'accepted', justification: accepted.reason, properties: { by: accepted.by, until: accepted.until, severity: accepted.originally } }],
      properties: { severity, cautions, subject, certain, figure, ...(worst === undefined ? {} : { worst, limit }) },
    };
  }

  #location(path: string, { start, end }: Span): object {
    return { physicalLocation: { artifactLocation: this.#artifact(path, 'analysisTarget'), region: regionOf(start, end) } };
  }

  #fix({ title, changes }: FixRow): object {
    return {
      description: { text: title },
      artifactChanges: changes.map(({ path, edits }) => ({
        artifactLocation: this.#artifact(path, 'analysisTarget'),
        replacements: edits.map(({ start, end, text }) => ({ deletedRegion: regionOf(start, end), ...(text === '' ? {} : { insertedContent: { text } }) })),
      })),
    };
  }

  #notification({ path, message }: Failure): object {
    // What is no path (an option, standard input) is no place either.
    const isFile = !path.startsWith('--') && path !== 'standard input';
    return {
      level: 'error', descriptor: { id: 'not-checked', index: 0 }, message: { text: `${path} ${message}.` },
      ...(isFile ? { locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(path), uriBaseId: base } } }] } : {}),
    };
  }

  #rule(code: string): number {
    const index = this.#rules.get(code) ?? this.#rules.size;
    this.#rules.set(code, index);
    return index;
  }

  #artifact(path: string, role: string): object {
    const index = this.#artifacts.get(path)?.index ?? this.#artifacts.size;
    if (!this.#artifacts.has(path)) this.#artifacts.set(path, { index, role });
    return { uri: uriOf(path), uriBaseId: base, index };
  }
}

/** A region by lines and by characters (section 3.30); an offset is left out where none is known. */
function regionOf(start: Span['start'], end: Span['end']): object {
  const lines = { startLine: start.line, startColumn: start.column, endLine: end.line, endColumn: end.column };
  return start.offset === undefined || end.offset === undefined ? lines : { ...lines, charOffset: start.offset, charLength: end.offset - start.offset };
}

/** A relative path as a URI reference. */
const uriOf = (path: string): string => path.split('/').map(encodeURIComponent).join('/');

/** What a finding is known by from run to run: its check, its entry, and, of several alike, its turn. */
function fingerprint({ code, entry, subject }: FindingRow, seen: Map<string, number>): string {
  const key = JSON.stringify([code, entry, subject ?? '']);
  const turn = (seen.get(key) ?? 0) + 1;
  seen.set(key, turn);
  return createHash('sha256').update(`${key}${turn}`, 'utf8').digest('hex').slice(0, 32);
}

/** `screw-whirls` as `ScrewWhirls`. */
const nameOf = (id: string): string => id.split('-').map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join('');

function ruleJson(id: string): object {
  const rule = ruleOf(id);
  if (!rule) return { id, name: nameOf(id) };
  return {
    id,
    name: nameOf(id),
    shortDescription: { text: rule.title },
    fullDescription: { text: rule.summary },
    help: { text: rule.text, markdown: rule.markdown },
    // A helpUri would have to be absolute (section 3.49.12), and the reference has no public address.
    ...(rule.severity === undefined ? {} : { defaultConfiguration: { level: levels[rule.severity] } }),
    properties: propertiesOf(rule),
  };
}

const propertiesOf = ({ id, bases, sources }: Rule): object => ({
  page: `server/docs/checks/${id}.md`,
  ...(bases.length === 0 ? {} : { basis: bases.join('; ') }),
  ...(sources.length === 0 ? {} : { source: sources.map(({ title, where, weak }) => `${title}${where === undefined ? '' : `, ${where}`}${weak === true ? ' (thinly sourced)' : ''}`).join('; ') }),
});
