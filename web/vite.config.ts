// SPDX-License-Identifier: Apache-2.0
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

import { firstViewInPlace } from './scripts/first-view.ts';
import { shellWorker } from './scripts/shell-worker.ts';

export default defineConfig({
    plugins: [svelte(), shellWorker(), firstViewInPlace()],
    // Svelte has a build for servers too; tests of screens need the one for browsers.
    resolve: process.env.VITEST ? { conditions: ['browser'] } : {},
    build: {
        target: 'es2022',
        // Nothing inline, so that the Content-Security-Policy can be strict.
        assetsInlineLimit: 0,
        modulePreload: { polyfill: false },
        reportCompressedSize: false,
    },
    server: { proxy: { '/api': 'http://127.0.0.1:8080' } },
    test: {
        environment: 'happy-dom',
        testTimeout: 60_000,
        include: ['tests/**/*.test.ts'],
        setupFiles: ['tests/setup.ts'],
    },
});
