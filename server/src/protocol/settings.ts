import { fieldAt } from './parameters.ts';

/** What a person can set, by file. */
export interface Settings {
  /** When findings are brought up to date. */
  readonly findings: 'typing' | 'save' | 'off';
  readonly inlayHints: boolean;
}

const defaults: Settings = { findings: 'typing', inlayHints: true };

/** The section of the editor's settings that is ours. */
export const section = 'axiswright';

/** Reads our section; what is missing or malformed has its default. */
export function readSettings(value: unknown): Settings {
  const findings = fieldAt(value, 'findings', 'when');
  const hints = fieldAt(value, 'inlayHints', 'enabled');
  return {
    findings: findings === 'save' || findings === 'off' ? findings : defaults.findings,
    inlayHints: typeof hints === 'boolean' ? hints : defaults.inlayHints,
  };
}

/** A client that does not answer has the defaults. */
const LONGEST_WAIT = 2_000;

/** The settings of each file, asked of the client once and kept until they change. */
export class SettingsByFile {
  /** Asks for our section as it holds for a file; undefined for clients that can only push their settings. */
  readonly #ask: ((uri: string) => Promise<unknown>) | undefined;
  readonly #kept = new Map<string, Promise<Settings>>();
  #pushed = defaults;

  constructor(ask: ((uri: string) => Promise<unknown>) | undefined) {
    this.#ask = ask;
  }

  of(uri: string): Promise<Settings> {
    const ask = this.#ask;
    if (!ask) return Promise.resolve(this.#pushed);
    let kept = this.#kept.get(uri);
    if (!kept) {
      kept = this.#read(uri, ask);
      this.#kept.set(uri, kept);
    }
    return kept;
  }

  /** The client says that settings have changed, and perhaps which. */
  changed(pushed: unknown): void {
    if (pushed !== undefined && pushed !== null) this.#pushed = readSettings(pushed);
    this.#kept.clear();
  }

  forget(uri: string): void {
    this.#kept.delete(uri);
  }

  async #read(uri: string, ask: (uri: string) => Promise<unknown>): Promise<Settings> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<undefined>((resolve) => (timer = setTimeout(() => resolve(undefined), LONGEST_WAIT)));
    try {
      return readSettings(await Promise.race([ask(uri), late]));
    } catch {
      return defaults; // a client that promised to answer and does not
    } finally {
      clearTimeout(timer);
    }
  }
}
