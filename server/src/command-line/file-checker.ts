import { findingLinesOf } from './check-lines.ts';
import { fileReport } from './check-report.ts';
import { reaches, type Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import { findingsIn, type FileFindings, type FindingRow } from './findings.ts';
import { faultText, MachineReader, pathOfUri, type ReaderSetup } from './machine-reader.ts';
import { pageFrom, type PageSetup } from './style.ts';
import { tallyOf, type Tally } from './summary.ts';

/** Everything that decides what is said of a file. Plain data, so that a worker can be given it. */
export interface CheckSetup {
  readonly reader: ReaderSetup;
  readonly fixes: boolean;
  readonly failOn: Threshold;
  /** Only what is at or above the threshold, in the texts below. */
  readonly quiet: boolean;
  /** The texts to be written: for the screen, and for a file. */
  readonly screen: TextForm | undefined;
  readonly filed: TextForm | undefined;
  /** Whether the findings themselves are wanted, for a document. */
  readonly rows: boolean;
}

export type TextForm = { readonly as: 'human'; readonly page: PageSetup } | { readonly as: 'lines' };

/** What there is to be said of one file. Plain data. */
export interface CheckedFile {
  readonly path: string;
  /** Undefined where it could not be checked, and for settings of which there is nothing to be said. */
  readonly tally?: Tally;
  readonly rows?: readonly FindingRow[];
  readonly screen: string;
  readonly filed: string;
  readonly failures: readonly Failure[];
  /** Other files that it rests on, there or not, by absolute path. */
  readonly restsOn: readonly string[];
}

/** Checks one file after another. */
export class FileChecker {
  readonly #reader: MachineReader;

  constructor(readonly setup: CheckSetup) {
    this.#reader = new MachineReader(setup.reader);
  }

  /** Never throws: what goes wrong is a failure of the file. */
  check(file: string): CheckedFile {
    const machine = this.#reader.read(file);
    const nothing = { screen: '', filed: '', restsOn: [] };
    if (machine === undefined) return { ...nothing, path: file, failures: [] };
    if (!('snapshot' in machine)) return { ...nothing, path: machine.path, failures: [machine] };
    const failures: Failure[] = [];
    const { fixes, failOn, screen, filed, rows } = this.setup;
    try {
      const found = findingsIn(machine, this.#reader.places, fixes, (failure) => failures.push(failure));
      return {
        path: machine.path,
        tally: tallyOf(found, failOn),
        ...(rows ? { rows: found.findings } : {}),
        screen: this.#text(found, screen),
        filed: this.#text(found, filed),
        failures,
        restsOn: machine.snapshot.watched.flatMap((uri) => pathOfUri(uri) ?? []),
      };
    } catch (error) {
      return { ...nothing, path: machine.path, failures: [...failures, { path: machine.path, message: faultText('shown', error) }] };
    }
  }

  #text(all: FileFindings, form: TextForm | undefined): string {
    if (form === undefined) return '';
    const { quiet, failOn } = this.setup;
    const file = quiet ? { ...all, findings: all.findings.filter(({ severity }) => reaches(severity, failOn)) } : all;
    if (form.as === 'lines') return findingLinesOf(file);
    return quiet && file.findings.length === 0 ? '' : `${fileReport(file, pageFrom(form.page), !quiet)}\n`;
  }
}
