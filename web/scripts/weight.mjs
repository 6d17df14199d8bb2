// SPDX-License-Identifier: Apache-2.0
//
// Fails when the first page loads more than 120 KB of compressed script: node scripts/weight.mjs
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

const limit = 120 * 1000;
const dist = new URL('../dist/', import.meta.url);
const page = readFileSync(new URL('index.html', dist), 'utf8');

// What the document names, and what those files import at once (not what they load later).
const seen = new Set();
const waiting = [...page.matchAll(/(?:src|href)="\/([^"]+\.js)"/g)].map((found) => found[1]);
let total = 0;
while (waiting.length > 0) {
    const name = waiting.pop();
    if (seen.has(name)) continue;
    seen.add(name);
    const source = readFileSync(new URL(name, dist));
    total += gzipSync(source).length;
    for (const found of source.toString().matchAll(/(?:from|import)\s*"\.\/([^"]+\.js)"/g)) {
        waiting.push(`assets/${found[1]}`);
    }
}
if (seen.size === 0) throw new Error('dist/index.html names no script');
console.log(`${seen.size} scripts on first load, ${total} bytes compressed, at most ${limit}`);
process.exit(total <= limit ? 0 : 1);
