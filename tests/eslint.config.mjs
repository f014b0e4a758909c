import js from '@eslint/js';
import next from '@next/eslint-plugin-next';
import a11y from 'eslint-plugin-jsx-a11y-x';
import hooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const root = `${import.meta.dirname}/..`;

export default tseslint.config(
  { ignores: ['.next/**', 'out/**', 'node_modules/**', 'public/**', 'next-env.d.ts', 'next.config.mjs'] },
  { basePath: root },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [js.configs.recommended, ...tseslint.configs.strictTypeChecked, ...tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
    },
  },
  { files: ['app/**/*.tsx'], extends: [hooks.configs.flat.recommended, next.configs['core-web-vitals'], a11y.configs.strict] },
);
