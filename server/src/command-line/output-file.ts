import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, lstatSync, openSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import { isDescription } from './find-files.ts';
import { writeReason } from './record-file.ts';

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** A file that is written piece by piece beside its place, and put there in one step when it is whole: nobody ever sees half of it. */
export class OutputFile {
  readonly #aside: string;
  #open: number | undefined;
  #failure: string | undefined;

  private constructor(readonly path: string) {
    this.#aside = `${path}.${process.pid}-${randomBytes(4).toString('hex')}.tmp`;
  }

  /** Begins a file. What cannot be begun says why, as a clause that follows its path. */
  static begin(path: string): OutputFile | { readonly failure: string } {
    if (isDescription(path)) return { failure: 'would be overwritten, and it is a description; give the output another name' };
    const there = lstatSync(path, { throwIfNoEntry: false });
    if (there && !there.isFile()) return { failure: `is ${there.isDirectory() ? 'a folder' : there.isSymbolicLink() ? 'a link' : 'not an ordinary file'}, so nothing can be put in its place` };
    const file = new OutputFile(path);
    try {
      file.#open = openSync(file.#aside, 'wx', 0o666);
    } catch (error) {
      return { failure: writeReason(error) };
    }
    for (const signal of signals) process.once(signal, file.#interrupted);
    return file;
  }

  write(text: string): void {
    if (this.#open === undefined || this.#failure !== undefined) return;
    try {
      const bytes = Buffer.from(text, 'utf8');
      for (let written = 0; written < bytes.length; ) written += writeSync(this.#open, bytes, written);
    } catch (error) {
      this.#failure = writeReason(error);
    }
  }

  /** Puts the file in its place. Returns why it could not be written, as a clause that follows its path. */
  finish(): string | undefined {
    try {
      if (this.#failure === undefined && this.#open !== undefined) {
        fsyncSync(this.#open);
        closeSync(this.#open);
        this.#open = undefined;
        renameSync(this.#aside, this.path);
      }
    } catch (error) {
      this.#failure = writeReason(error);
    }
    this.abandon();
    return this.#failure;
  }

  /** Leaves nothing behind of a file that is not finished. */
  abandon(): void {
    for (const signal of signals) process.off(signal, this.#interrupted);
    if (this.#open !== undefined) closeSync(this.#open);
    this.#open = undefined;
    try {
      unlinkSync(this.#aside);
    } catch {
      // It is in its place, or was never made.
    }
  }

  readonly #interrupted = (signal: NodeJS.Signals): void => {
    this.abandon();
    process.kill(process.pid, signal);
  };
}
