// Lint rules: those that need types, since a promise that nobody waits for is how a language server goes wrong in silence.
import tseslint from 'typescript-eslint';

/** A suppression says why: `// eslint-disable-next-line some-rule -- the reason`. */
const reasoned = {
  rules: {
    'suppressions-say-why': {
      meta: { type: 'suggestion', schema: [], messages: { why: 'Say why the rule does not hold here: "-- reason".' } },
      create: (context) => ({
        Program() {
          for (const comment of context.sourceCode.getAllComments()) {
            const text = comment.value.trim();
            if (/^eslint-(?:disable|enable)/.test(text) && !/\s--\s+\S/.test(text)) context.report({ loc: comment.loc, messageId: 'why' });
            if (/^@ts-(?:ignore|nocheck)/.test(text)) context.report({ loc: comment.loc, messageId: 'why' });
          }
        },
      }),
    },
  },
};

const everywhere = {
  plugins: { project: reasoned },
  linterOptions: { reportUnusedDisableDirectives: 'error' },
  rules: {
    'project/suppressions-say-why': 'error',
    'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx'], location: 'start' }],
    eqeqeq: ['error', 'always', { null: 'ignore' }],
    'no-var': 'error',
    'prefer-const': 'error',
    'no-console': 'off',
  },
};

export default tseslint.config(
  { ignores: ['node_modules/', 'dist/', 'server/src/generated/', 'test/artefacts/'] },
  {
    files: ['**/*.ts', '**/*.mts'],
    extends: [everywhere, ...tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': ['error', { ignoreVoid: true }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/require-await': 'off', // an interface may ask for a promise
    },
  },
  {
    files: ['**/*.mjs', '**/*.cjs', '**/*.js'],
    extends: [everywhere],
    rules: { 'no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }], 'no-undef': 'off', 'no-unreachable': 'error', 'no-dupe-keys': 'error' },
  },
);
