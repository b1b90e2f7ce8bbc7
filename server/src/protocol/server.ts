import type { Connection, InitializeResult } from 'vscode-languageserver';
import { clientOf, type Client } from './client.ts';
import { answerCompletion } from './completion-answers.ts';
import { Desk } from './desk.ts';
import { Documents } from './documents.ts';
import { Fence } from './fence.ts';
import { answerAccept } from './accept-answers.ts';
import { Files, type FileSource } from './files.ts';
import { answerFixes } from './fix-answers.ts';
import { Folders } from './folders.ts';
import { Hints } from './hint-answers.ts';
import { offersTo } from './offers.ts';
import { answerOutline } from './outline-answers.ts';
import { fieldAt, fieldsOf, textIn } from './parameters.ts';
import { answerReading } from './reading-answers.ts';
import { Scheduler, type Analysis } from './scheduling.ts';
import { settingsNear } from './settings-near.ts';
import { section, SettingsByFile } from './settings.ts';
import { Telling, type Outbox } from './telling.ts';
import { Texts } from './texts.ts';
import { localDay, onNewDay } from './today.ts';

/** What differs between the hosts in which the server runs. */
export interface Host {
  readonly loadAnalysis: () => Promise<Analysis>;
  /** Reads files inside the given folders; undefined where there is no disk: then the client is asked. */
  readonly files: ((folders: () => readonly string[]) => FileSource) | undefined;
  /** The address of a page that lies beside the server; undefined where it does not exist. */
  readonly pageAddress: (id: string) => string | undefined;
  /** The day, YYYY-MM-DD; that of the computer's clock when left out. */
  readonly today?: () => string;
}

/** Longest time that the client has for reading a file. */
const LONGEST_READING = 10_000;

/** Starts a language server on a connection. Nothing of the analysis is loaded before `initialize` has been answered. */
export function startServer(connection: Connection, host: Host): void {
  connection.onInitialize((params): InitializeResult => {
    const client = clientOf(params);
    serve(connection, host, client, new Folders(params));
    return { serverInfo: { name: 'Axiswright' }, capabilities: offersTo(client) };
  });
  connection.listen();
}

function serve(connection: Connection, host: Host, client: Client, folders: Folders): void {
  const fence = new Fence(connection, (line) => connection.console.error(line));
  const documents = new Documents();
  folders.openTexts = () => documents.descriptions.map(({ uri }) => uri);
  const files = new Files(documents, fileSource(connection, host, client, folders));
  const today = host.today ?? localDay;
  const surroundings = { today, settingsNear: (uri: string) => settingsNear(uri, folders.all) };
  const scheduler = new Scheduler(documents, files, host.loadAnalysis, () => fence.received, surroundings);
  const settings = new SettingsByFile(client.configuration ? (uri) => connection.workspace.getConfiguration({ scopeUri: uri, section }) : undefined);
  const pageAddress = (id: string): string | undefined => (client.pages ? (scheduler.loaded?.hasPage(id) === true ? `axiswright-page:/${id}.md` : undefined) : host.pageAddress(id));
  const desk = new Desk({ documents, scheduler, settings, client, fence, pageAddress });
  const hints = new Hints(desk);
  const telling = new Telling(desk, hints, outbox(connection));
  const all = (): void => telling.reconsider(documents.descriptions);

  new Texts(desk, files, telling).follow();
  telling.answer();
  hints.answer();
  answerReading(desk);
  answerCompletion(desk);
  answerOutline(desk);
  answerFixes(desk);
  answerAccept(desk);
  fence.request('axiswright/page', null, async (params) => {
    const markdown = (await scheduler.analysis()).page(textIn(fieldsOf(params)['id']) ?? '');
    return markdown === undefined ? null : { markdown };
  });
  fence.notification('workspace/didChangeConfiguration', (params) => {
    settings.changed(fieldAt(params, 'settings', section));
    all();
  });
  fence.notification('workspace/didChangeWorkspaceFolders', (params) => {
    folders.changed(fieldsOf(params)['event']);
    files.allChanged();
    all();
  });
  fence.notification('initialized', async () => {
    onNewDay(today, () => fence.run('a new day', all));
    fence.run('registration', () => register(connection, client));
    await scheduler.analysis();
  });
}

/** Asks for the notices that are not sent unless asked for. */
async function register(connection: Connection, client: Client): Promise<void> {
  const watchers = ['**/*.machine.yaml', '**/*.parts.yaml', '**/axiswright.yaml'].map((globPattern) => ({ globPattern }));
  const registrations = [
    ...(client.watchesFiles ? [{ id: 'files', method: 'workspace/didChangeWatchedFiles', registerOptions: { watchers } }] : []),
    ...(client.configurationNotice ? [{ id: 'settings', method: 'workspace/didChangeConfiguration', registerOptions: { section } }] : []),
  ];
  if (registrations.length > 0) await connection.sendRequest('client/registerCapability', { registrations });
}

function outbox(connection: Connection): Outbox {
  return {
    publish: (params) => connection.sendDiagnostics(params),
    refreshFindings: () => connection.languages.diagnostics.refresh(),
    refreshHints: () => connection.languages.inlayHint.refresh(),
    status: (status) => connection.sendNotification('axiswright/status', status),
  };
}

/** Files of the disk are read from it, where there is one; all others are asked of a client that says that it reads them. */
function fileSource(connection: Connection, host: Host, client: Client, folders: Folders): FileSource {
  const onDisk = host.files?.(() => folders.all);
  return async (uri) => {
    if (onDisk && uri.startsWith('file:')) return onDisk(uri);
    if (onDisk && !client.readsFiles) return undefined;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<undefined>((resolve) => (timer = setTimeout(() => resolve(undefined), LONGEST_READING)));
    const answer: unknown = await Promise.race([connection.sendRequest('axiswright/readFile', { uri }), late]);
    clearTimeout(timer);
    return textIn(fieldsOf(answer)['text']);
  };
}
