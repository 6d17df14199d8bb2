// SPDX-License-Identifier: Apache-2.0
import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import ts from 'typescript-eslint';

import svelteConfig from './svelte.config.js';

export default ts.config(
    { ignores: ['dist/', 'node_modules/', 'src/lib/contract.ts'] },
    js.configs.recommended,
    ...ts.configs.strict,
    ...svelte.configs.recommended,
    { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
    {
        files: ['**/*.svelte', '**/*.svelte.ts'],
        languageOptions: { parserOptions: { parser: ts.parser, svelteConfig } },
    },
    {
        rules: {
            // TypeScript knows the names better.
            'no-undef': 'off',
            eqeqeq: 'error',
            // User text is always escaped.
            'svelte/no-at-html-tags': 'error',
            // Plain maps hold what no screen shows.
            'svelte/prefer-svelte-reactivity': 'off',
            // Routes here are plain paths; there is no SvelteKit to resolve them.
            'svelte/no-navigation-without-resolve': 'off',
        },
    },
);
