import { reaches, type Threshold } from './exit-status.ts';
import type { FilePart, RunDocument, RunEnd } from './documents.ts';
import type { FindingRow } from './findings.ts';

/**
 * What `check --format junit` prints: the XML that test runners made common; there is no published standard. A file is a suite, a finding is
 * a test. What is at or above the threshold is a failure, what is accepted is skipped, what is below passes; a file without findings has one
 * test that passes, one that could not be checked has an error. Names hold no line numbers, so that a test keeps its history when lines move.
 */
export class JunitReport implements RunDocument {
  constructor(readonly failOn: Threshold) {}

  begin(): string {
    return '<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="axiswright">\n';
  }

  file({ path, rows }: FilePart): string {
    if (rows === undefined) return ''; // told at the end, with what else could not be checked
    const seen = new Map<string, number>();
    const cases = rows.length === 0 ? [testCase(path, 'no findings', undefined, '')] : rows.map((row) => this.#finding(path, row, seen));
    const failed = rows.filter((row) => this.#fails(row)).length;
    const skipped = rows.filter((row) => !this.#fails(row) && row.accepted !== undefined).length;
    return suite(path, cases, { failures: failed, errors: 0, skipped });
  }

  end({ failures, unmatched }: RunEnd): string {
    const refused = [...failures, ...unmatched.map((pattern) => ({ path: pattern, message: 'holds no *.machine.yaml or *.parts.yaml' }))];
    const suites = refused.map(({ path, message }) =>
      suite(path, [testCase(path, 'could not be checked', undefined, `      <error type="not-checked" message=${attribute(`${path} ${message}.`)}/>\n`)], { failures: 0, errors: 1, skipped: 0 }));
    return `${suites.join('')}</testsuites>\n`;
  }

  #fails({ severity }: FindingRow): boolean {
    return reaches(severity, this.failOn);
  }

  #finding(path: string, row: FindingRow, seen: Map<string, number>): string {
    const { code, severity, entry, accepted, start } = row;
    const plain = entry === '' ? code : `${code} at ${entry}`;
    const turn = (seen.get(plain) ?? 0) + 1;
    seen.set(plain, turn);
    const inside = this.#fails(row)
      ? `      <failure type=${attribute(severity)} message=${attribute(row.message)}>${content(detail(path, row))}</failure>\n`
      : accepted !== undefined
        ? `      <skipped message=${attribute(`accepted${accepted.by === undefined ? '' : ` by ${accepted.by}`}: ${accepted.reason}`)}/>\n`
        : `      <system-out>${content(detail(path, row))}</system-out>\n`;
    return testCase(path, turn === 1 ? plain : `${plain} (${turn})`, start.line, inside);
  }
}

/** As in the other outputs, a line each: where and what, what it comes from, what can hurt, what would help. */
function detail(path: string, { severity, message, start, related, cautions, fixes }: FindingRow): string {
  return [
    `${path}:${start.line}:${start.column}: ${severity}: ${message}`,
    ...related.map((place) => `${place.path}:${place.start.line}: ${place.message}`),
    ...cautions.map((caution) => `caution: ${caution}`),
    ...fixes.map((fix) => `fix: ${fix.title}`),
  ].join('\n');
}

// Readers expect a time; there is none that would be the same on every run.
const suite = (name: string, cases: readonly string[], { failures, errors, skipped }: { readonly failures: number; readonly errors: number; readonly skipped: number }): string =>
  `  <testsuite name=${attribute(name)} tests="${cases.length}" failures="${failures}" errors="${errors}" skipped="${skipped}" time="0">\n${cases.join('')}  </testsuite>\n`;

function testCase(path: string, name: string, line: number | undefined, inside: string): string {
  const head = `    <testcase classname=${attribute(path)} name=${attribute(name)} file=${attribute(path)}${line === undefined ? '' : ` line="${line}"`} time="0"`;
  return inside === '' ? `${head}/>\n` : `${head}>\n${inside}    </testcase>\n`;
}

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;', '\t': '&#9;', '\n': '&#10;', '\r': '&#13;' };

/** What is no character of XML 1.0 (section 2.2) becomes the sign for a character that cannot be shown. */
const allowed = (text: string): string => text.replace(/\p{Cs}/gu, '\ufffd').replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd');

const content = (text: string): string => allowed(text).replace(/[&<>\r]/g, (sign) => entities[sign] ?? sign);

const attribute = (text: string): string => `"${allowed(text).replace(/[&<>"'\t\n\r]/g, (sign) => entities[sign] ?? sign)}"`;
