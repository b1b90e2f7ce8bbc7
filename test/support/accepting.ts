import { Snapshots, type Snapshot } from '../../server/src/services/snapshot.ts';
import { machineUri } from './cursor.ts';
import { machineWith, yamlOf } from './machines.ts';

/**
 * A lift whose screw turns at 10 mm/s / 3 mm, 200 rpm (hand calculation), where 100 rpm are allowed: the one warning that there is.
 * `accepted` is put behind it as it is written.
 */
export const liftAccepting = (accepted = '', changes: Readonly<Record<string, unknown>> = {}): string => `${yamlOf(machineWith('lift', { 'screw.speed-limit': '100 rpm', ...changes }))}${accepted}`;

export const tooFast = 'screw-too-fast-for-its-maker';
export const tooFastAt = 'axes/lift/drive/screw/speed-limit';

/** An entry of `accepted` with everything that it may hold. */
export function entry(parts: Readonly<Record<string, string>> = {}): string {
  const whole = { check: tooFast, at: tooFastAt, reason: 'it turns for a minute a day', by: 'R. Okafor', until: '2027-06-30', ...parts };
  return `${Object.entries(whole).filter(([, value]) => value !== '').map(([key, value], index) => `  ${index === 0 ? '-' : ' '} ${key}: ${value}`).join('\n')}\n`;
}

export const accepted = (...entries: readonly string[]): string => `accepted:\n${entries.join('')}`;

export interface Surroundings {
  readonly today?: string;
  /** The text of the settings in the folder of the machine. */
  readonly settings?: string;
  readonly lists?: Readonly<Record<string, string>>;
}

export const settingsUri = new URL('axiswright.yaml', machineUri).href;

/** A fresh snapshot of a machine's text on a fixed day, with settings beside it. */
export function snapshotIn(text: string, { today, settings, lists = {} }: Surroundings = {}, uri = machineUri): Snapshot {
  const files = new Map(Object.entries(lists).map(([path, content]) => [new URL(path, machineUri).href, content]));
  if (settings !== undefined) files.set(settingsUri, settings);
  return new Snapshots((wanted) => files.get(wanted), { today: () => today, settingsNear: () => [settingsUri] }).take(uri, text);
}

/** What is found, as `code severity`. */
export const found = (snapshot: Snapshot): readonly string[] => snapshot.diagnostics.map(({ code, severity }) => `${code} ${severity}`);
