import svelte from 'eslint-plugin-svelte'
import { defineConfig } from 'eslint/config'
import tseslint from 'typescript-eslint'
import { arrowsRule } from './scripts/lint/arrows-rule.js'
import { effectsRule } from './scripts/lint/effects-rule.js'
import { unitsRule } from './scripts/lint/units-rule.js'

const impure = 'the engine is pure: the same build gives the same numbers, on any day and machine'

export default defineConfig(
  {
    ignores: [
      'dist/',
      'release/',
      'node_modules/',
      'test-results/',
      'playwright-report/',
      '**/*.cjs',
      'test/fixtures/',
    ],
  },
  tseslint.configs.recommended,
  svelte.configs.recommended,
  {
    plugins: { house: { rules: { arrows: arrowsRule, effects: effectsRule, units: unitsRule } } },
    rules: {
      'house/arrows': 'error',
      'house/effects': 'error',
      'max-lines': ['error', { max: 400 }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-console': 'error',
    },
  },
  { files: ['scripts/**', 'src-main/**', 'test/**'], rules: { 'no-console': 'off' } },
  {
    files: ['shared-engine/**', 'src-renderer/**', 'src-main/**'],
    // Numerics know no units: a 2π there is of a Gaussian, a thousandth a step.
    ignores: ['shared-engine/units/**', 'shared-engine/numeric/**', 'shared-engine/constants.ts'],
    rules: { 'house/units': 'error' },
  },
  // A fixture's first argument must be a pattern, even where it takes nothing.
  { files: ['test/window/launch/**'], rules: { 'no-empty-pattern': 'off' } },
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { parserOptions: { parser: tseslint.parser, extraFileExtensions: ['.svelte'] } },
    // TypeScript knows the browser's names; the plain rule does not.
    rules: { 'no-undef': 'off' },
  },
  {
    files: ['shared-engine/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', { name: 'Date', message: impure }],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: impure }],
    },
  },
)
