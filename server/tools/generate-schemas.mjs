#!/usr/bin/env node
// Compiles schemas/*.schema.json into server/src/generated/:
//   schema-validators.mjs, .d.mts   one validator for each kind of file, as plain code that needs neither ajv nor eval
//   schema-types.ts                 the types that the schemas describe
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import standaloneCode from 'ajv/dist/standalone/index.js';
import { build } from 'esbuild';
import { compile } from 'json-schema-to-typescript';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const target = join(root, 'server', 'src', 'generated');
const notice = '// Written by server/tools/generate-schemas.mjs from schemas/. Do not edit.\n';

/** Keywords of our own, which describe and do not check. */
const annotations = ['quantity', 'refersTo', 'defines', 'enumDescriptions', 'aboveZero'];

const kinds = ['machine', 'parts', 'settings'];
const schemas = await Promise.all(kinds.map(async (kind) => JSON.parse(await readFile(join(root, 'schemas', `${kind}.schema.json`), 'utf8'))));

/** A copy without the keywords that only describe: they are a third of the text, and the validators carry the schemas in them. */
function without(schema, left) {
  if (Array.isArray(schema)) return schema.map((item) => without(item, left));
  if (typeof schema !== 'object' || schema === null) return schema;
  return Object.fromEntries(
    Object.entries(schema).flatMap(([key, value]) => {
      // Below `properties` and `$defs` the keys are names, not keywords.
      if (key === 'properties' || key === '$defs') return [[key, Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, without(inner, left)]))]];
      return left.includes(key) ? [] : [[key, without(value, left)]];
    }),
  );
}

const ajv = new Ajv2020({
  schemas: schemas.map((schema) => without(schema, [...annotations, 'title', 'description', 'examples'])),
  allErrors: true,
  // A part is judged by the variant that its kind names, never by all of them.
  discriminator: true,
  allowUnionTypes: true,
  strict: true,
  strictRequired: false,
  // Messages are ours.
  messages: false,
  code: { source: true, esm: true, optimize: true },
});

const exported = Object.fromEntries(kinds.map((kind, index) => [kind, schemas[index].$id]));
const code = (standaloneCode.default ?? standaloneCode)(ajv, exported);
// The code may call helpers of ajv; bundled, it stands on its own.
const bundled = await build({
  stdin: { contents: code, resolveDir: root, loader: 'js' },
  bundle: true,
  minify: true,
  format: 'esm',
  target: 'es2022',
  write: false,
  legalComments: 'none',
  logLevel: 'warning',
});

const declarations = `${notice}export interface SchemaError {
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly propertyName?: string;
}
export interface SchemaValidator {
  (value: unknown): boolean;
  readonly errors?: readonly SchemaError[] | null;
}
${kinds.map((kind) => `export declare const ${kind}: SchemaValidator;\n`).join('')}`;

/** Types: references between the files become references within one, and annotations go. */
async function types() {
  const definitions = {};
  for (const [index, kind] of kinds.entries()) {
    const { $defs, $id, $schema, ...schema } = without(schemas[index], [...annotations, 'title', 'examples']);
    Object.assign(definitions, $defs, { [`${kind}-file`]: schema });
  }
  const together = { title: 'Described files', type: 'object', properties: Object.fromEntries(kinds.map((kind) => [kind, { $ref: `#/$defs/${kind}-file` }])), additionalProperties: false, $defs: definitions };
  const text = JSON.stringify(together).replaceAll(/"[a-z]+\.schema\.json#/g, '"#');
  return compile(JSON.parse(text), 'DescribedFiles', { bannerComment: notice.trim(), additionalProperties: false, declareExternallyReferenced: true, format: false });
}

await mkdir(target, { recursive: true });
await writeFile(join(target, 'schema-validators.mjs'), notice + bundled.outputFiles[0].text);
await writeFile(join(target, 'schema-validators.d.mts'), declarations);
await writeFile(join(target, 'schema-types.ts'), await types());
