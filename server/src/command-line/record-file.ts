import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, lstatSync, openSync, readFileSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import { decode, reasonOf } from './read-text.ts';

/** `lift.machine.yaml` has its record in `lift.record.md` beside it. */
export const recordPath = (description: string): string => description.replace(/\.machine\.yaml$/, '.record.md');

/** The record that is there: its text, undefined where there is none, or why it cannot be read, as a clause that follows its path. */
export function readRecord(file: string): { readonly text: string | undefined } | { readonly failure: string } {
  const found = lstatSync(file, { throwIfNoEntry: false });
  if (!found) return { text: undefined };
  // A link could lead a write out of the folders that were asked for.
  if (!found.isFile()) return { failure: `is ${found.isDirectory() ? 'a folder' : found.isSymbolicLink() ? 'a link' : 'not an ordinary file'}, so no record can be kept there` };
  try {
    return decode(readFileSync(file));
  } catch (error) {
    return { failure: reasonOf(error, file) };
  }
}

/** Writes beside the file and renames, so that nobody ever sees half of it. Returns why it could not be written, as a clause that follows its path. */
export function writeRecord(file: string, text: string): string | undefined {
  const aside = `${file}.${process.pid}-${randomBytes(4).toString('hex')}.tmp`;
  let open: number | undefined;
  try {
    // `wx`: never into something that is there already.
    open = openSync(aside, 'wx', 0o666);
    const bytes = Buffer.from(text, 'utf8');
    for (let written = 0; written < bytes.length; ) written += writeSync(open, bytes, written);
    fsyncSync(open);
    closeSync(open);
    open = undefined;
    renameSync(aside, file);
    return undefined;
  } catch (error) {
    if (open !== undefined) closeSync(open);
    removeIfThere(aside);
    return writeReason(error);
  }
}

function removeIfThere(path: string): void {
  try {
    unlinkSync(path);
  } catch {
    // It was never made.
  }
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'may not be written: its folder or the file is read-only for you',
  EPERM: 'may not be written: its folder or the file is read-only for you',
  EROFS: 'may not be written: the disk is read-only',
  ENOSPC: 'may not be written: the disk is full',
  ENOENT: 'cannot be written: its folder does not exist',
  EDQUOT: 'may not be written: no more room is granted to you',
};

/** Why the system refused a write, as a clause that follows the path. */
export function writeReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? `cannot be written (${code === '' ? String(error) : code})`;
}
