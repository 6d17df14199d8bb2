// SPDX-License-Identifier: Apache-2.0
//
// Writes dist/worker.js: src/worker.js with the list of files it keeps for times without a network.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

import type { Plugin } from 'vite';

export function shellWorker(): Plugin {
    return {
        name: 'shell-worker',
        apply: 'build',
        generateBundle(_options, bundle) {
            const files = Object.keys(bundle)
                .filter((name) => !name.endsWith('.map') && !name.endsWith('.html'))
                .map((name) => `/${name}`)
                .sort();
            const source = readFileSync(new URL('../src/worker.js', import.meta.url), 'utf8');
            const edition = createHash('sha256')
                .update(files.join('\n') + source)
                .digest('hex')
                .slice(0, 16);
            this.emitFile({
                type: 'asset',
                fileName: 'worker.js',
                source: source
                    .replace("'EDITION'", JSON.stringify(edition))
                    .replace('[/* FILES */]', JSON.stringify(files)),
            });
        },
    };
}
