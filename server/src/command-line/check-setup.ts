import type { CheckOptions } from './check-options.ts';
import type { RunDocument } from './documents.ts';
import type { Threshold } from './exit-status.ts';
import type { CheckSetup, TextForm } from './file-checker.ts';
import { FindingsJson } from './findings-json.ts';
import type { Host } from './host.ts';
import { JunitReport } from './junit.ts';
import type { Listing } from './read-machines.ts';
import { SarifLog } from './sarif.ts';
import { pageSetupFor } from './style.ts';

/** What a document in a file looks like does not depend on the terminal. */
const FILED_COLUMNS = 100;

/** The same for all files of a run. */
export function setupFor({ setup: reader, settings }: Listing, options: CheckOptions, host: Host): CheckSetup {
  const { format, output } = options;
  const form = (page: Extract<TextForm, { as: 'human' }>['page']): TextForm | undefined => (format === 'human' ? { as: 'human', page } : format === 'lines' ? { as: 'lines' } : undefined);
  const page = pageSetupFor(host, options.color);
  return {
    reader,
    fixes: options.fixes && (format !== 'lines' || output !== undefined),
    failOn: options.failOn ?? settings?.failOn ?? 'error',
    quiet: options.quiet === true,
    screen: output === undefined ? form(page) : { as: 'human', page },
    filed: output === undefined ? undefined : form({ columns: FILED_COLUMNS, color: false }),
    rows: documentFor(format, 'error') !== undefined,
  };
}

export const workersFor = ({ workers }: CheckOptions, { cores }: Host): number => workers ?? cores ?? 1;

/** The document that a format is; undefined for texts. */
export function documentFor(format: CheckOptions['format'], failOn: Threshold): RunDocument | undefined {
  if (format === 'json') return new FindingsJson(failOn);
  if (format === 'sarif') return new SarifLog();
  return format === 'junit' ? new JunitReport(failOn) : undefined;
}
