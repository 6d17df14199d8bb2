// SPDX-License-Identifier: Apache-2.0
//
// Two documents out of one: index.html with the first screen already in it, and elsewhere.html, which
// every other path is answered with, without it.
import { fileURLToPath } from 'node:url';

import { svelte } from '@sveltejs/vite-plugin-svelte';
import { build, type Plugin } from 'vite';

// Not for serving: the same screen, built for where there is no browser.
const folder = new URL('../node_modules/.first-view/', import.meta.url);
const place = '<div id="app"></div>';

async function firstView(): Promise<string> {
    await build({
        configFile: false,
        logLevel: 'warn',
        plugins: [svelte()],
        ssr: { noExternal: true },
        build: { ssr: 'src/first-view.ts', outDir: fileURLToPath(folder), copyPublicDir: false },
    });
    const made = (await import(new URL('first-view.js', folder).href)) as {
        firstView: () => string;
    };
    return made.firstView();
}

export function firstViewInPlace(): Plugin {
    return {
        name: 'first-view',
        apply: 'build',
        enforce: 'post',
        async generateBundle(_options, bundle) {
            const page = bundle['index.html'];
            if (page?.type !== 'asset') return;
            const empty = String(page.source);
            if (!empty.includes(place)) throw new Error(`index.html has no ${place}`);
            this.emitFile({ type: 'asset', fileName: 'elsewhere.html', source: empty });
            const view = await firstView();
            page.source = empty.replace(place, () => `<div id="app">${view}</div>`);
        },
    };
}
