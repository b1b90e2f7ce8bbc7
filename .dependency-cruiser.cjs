'use strict';
// The import rules between the rooms of the project. Text goes in at the left and what the editor shows comes out at the right; each room knows
// only rooms to its left. Checked by `npm run rules`, and so by `npm test`.

/** The packages that a room may use, as they lie below node_modules. */
const packages = (...names) => names.map((name) => `(^|/)node_modules/${name}(/|$)`);
/** A room of the server; what is generated from its files belongs to it. */
const room = (name) => `^server/src/${name}/`;
const generated = (...names) => names.map((name) => `^server/src/generated/${name}`);

/** The JSON Schemas: data that stands left of every room. */
const schemas = '^schemas/';

/** Room to what it may import besides itself. */
const rooms = {
  // The compiled schemas and their types lie in generated/; language alone runs them.
  language: [schemas, ...packages('yaml'), ...generated('(?!figures|checks|remedies|inputs|pages)')],
  catalogue: [],
  mechanics: packages('ml-matrix'), // linear algebra
  machine: [schemas, room('language'), room('catalogue'), ...generated('(?!figures|checks|remedies|pages)')],
  figures: [room('machine'), room('mechanics'), room('catalogue'), ...generated('figures')],
  checks: [room('figures'), room('machine'), ...generated('checks', 'pages')],
  remedies: [room('checks'), room('figures'), room('machine'), ...generated('remedies')],
  services: [schemas, ...['remedies', 'checks', 'figures', 'machine', 'mechanics', 'catalogue', 'language'].map(room), ...packages('d3-array', 'd3-shape', '@types/d3-array', '@types/d3-shape'), ...generated('')],
  protocol: [room('services'), ...packages('vscode-languageserver', 'vscode-languageserver-[a-z]+', 'vscode-jsonrpc')],
  'command-line': [room('services'), ...packages('commander', 'ignore'), '^package\\.json$'], // its own version
  library: [room('services')],
};

/** How a value is read and written, and where in a text it stands: rooms that word messages and propose edits need that of language, and no parsing. */
const wording = ['^server/src/language/(format-quantity|quantity-kinds|read-quantity|problems|spans|syntax-tree)\\.ts$'];
/** The names that a message may mean, and which units fit: for entries that name checks, problems and units. */
const naming = ['^server/src/language/(nearest-names|kind-units|problem-codes)\\.ts$'];
/** How one entry of a text is changed, and how the changed text is read again: for remedies, which are proven on the text that they make. */
const editing = ['^server/src/language/(edit-entry|read-document|incremental)\\.ts$'];

/** Finer exceptions: what of another room, further left, a room may use as well. */
const exceptions = {
  machine: [room('mechanics')], // the dimensions of a standard size follow from the standard's own relations
  figures: wording,
  checks: [...wording, ...naming],
  remedies: [...wording, ...editing, room('catalogue'), room('mechanics')], // the next standard size, and the inverse of a formula
};

/** Rooms that run anywhere: no file, no clock, no network. */
const core = ['language', 'catalogue', 'mechanics', 'machine', 'figures', 'checks', 'remedies', 'services', 'library', 'generated'];

module.exports = {
  forbidden: [
    { name: 'no-cycles', severity: 'error', comment: 'Modules that need each other are one module. Types alone may: they are gone when the program runs.', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    { name: 'no-unresolvable', severity: 'error', comment: 'An import that leads nowhere.', from: {}, to: { couldNotResolve: true, pathNot: '^vscode$' } },
    ...Object.entries(rooms).map(([name, allowed]) => ({
      name: `room-${name}`,
      severity: 'error',
      comment: `${name} may import: ${allowed.length === 0 ? 'nothing' : 'what .dependency-cruiser.cjs lists'}.`,
      from: { path: room(name) },
      to: { pathNot: [room(name), ...allowed, ...(exceptions[name] ?? [])], dependencyTypesNot: ['core'] },
    })),
    {
      name: 'core-is-portable',
      severity: 'error',
      comment: 'The core runs in a browser too: it reads no file, no clock, no network.',
      from: { path: room(`(${core.join('|')})`) },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'browser-server-is-portable', severity: 'error', comment: 'Only protocol/node*.ts may use Node.', from: { path: room('protocol'), pathNot: '/node[^/]*\\.ts$' }, to: { dependencyTypes: ['core'] } },
    { name: 'node-server-only-there', severity: 'error', comment: 'The Node half of the protocol library belongs to protocol/node*.ts.', from: { path: room('protocol'), pathNot: '/node[^/]*\\.ts$' }, to: { path: '(^|/)node_modules/vscode-(languageserver|jsonrpc)[^/]*/(lib/)?node' } },
    {
      name: 'room-client',
      severity: 'error',
      comment: 'The client knows the editor and the protocol, nothing of the server.',
      from: { path: '^client/' },
      to: { pathNot: ['^client/', '^vscode$', ...packages('@types/vscode', 'vscode-languageclient', 'vscode-languageserver-[a-z]+', 'vscode-jsonrpc')], dependencyTypesNot: ['core'] },
    },
    { name: 'client-is-portable', severity: 'error', comment: 'Only client/src/node*.ts may use Node.', from: { path: '^client/', pathNot: '/node[^/]*\\.ts$' }, to: { dependencyTypes: ['core'], pathNot: '^vscode$' } },
    { name: 'not-to-tests', severity: 'error', comment: 'The product does not import its tests or tools.', from: { path: '^(server/src|client)/' }, to: { path: '^(test|server/tools)/' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true, // types count: a room that knows a type knows the room
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'browser', 'default', 'types'] },
    builtInModules: { add: [] },
  },
};
