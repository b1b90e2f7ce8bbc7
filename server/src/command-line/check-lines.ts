import { printable } from './cells.ts';
import type { FileFindings } from './findings.ts';

/** One line a finding: `path:line:column: severity: message [code]`, for editors and filters. */
export function findingLinesOf({ machine, findings }: FileFindings): string {
  return findings
    .map(({ start, severity, code, message, cautions }) => {
      const text = [message, ...cautions.map((caution) => `Caution: ${caution}`)].join(' ');
      return `${printable(`${machine.path}:${start.line}:${start.column}: ${severity}: ${text} [${code}]`)}\n`;
    })
    .join('');
}
