import path from 'node:path';
import { defineConfig } from 'eslint/config';
import typescript from 'typescript-eslint';

export default defineConfig(
  { ignores: ['dist/**', '.cache/**', 'language/syntax/generated/**', 'tests/vendor/**'] },
  {
    files: ['{language,server,extension,tests}/**/*.ts'],
    extends: [typescript.configs.strict, typescript.configs.stylistic],
    languageOptions: {
      parserOptions: { projectService: true, tsconfigRootDir: path.resolve(import.meta.dirname, '..') }
    },
    rules: {
      eqeqeq: 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-misused-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      // A rest that leaves some keys out names them.
      '@typescript-eslint/no-unused-vars': ['error', { ignoreRestSiblings: true }],
      '@typescript-eslint/no-dynamic-delete': 'off',
      // The compiler asks for a check at every index: where the code knows better, it says so with a mark.
      '@typescript-eslint/no-non-null-assertion': 'off'
    }
  }
);
