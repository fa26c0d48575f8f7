import astro from 'eslint-plugin-astro';
import tseslint from 'typescript-eslint';

/** Lint for everything that is code. Layout of lines is left to the authors; rules here are about meaning. */
export default tseslint.config(
  { ignores: ['dist/', 'node_modules/', '.astro/', '.cache/', 'tests/.output/'] },
  tseslint.configs.strict,
  astro.configs['flat/recommended'],
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      // A name that begins with an underscore stands for an argument that the caller gives and the function does not need.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      complexity: ['error', 15],
      eqeqeq: 'error',
      'max-depth': ['error', 3],
      'no-console': 'error',
      'no-var': 'error',
      'prefer-const': 'error',
    },
  },
  {
    // Commands speak to the terminal.
    files: ['src/build/**', 'tests/**'],
    rules: { 'no-console': 'off' },
  },
);
