// SPDX-License-Identifier: Apache-2.0
//
// What the tests of the server say to it, and the line that ends a test.
import { readFileSync } from 'node:fs';

const text = readFileSync(new URL('../../examples/first-loaf.md', import.meta.url), 'utf8');

export const request = { breads: [{ name: 'first loaf', text }], now: '2026-11-28T08:00:00Z', day: { zone: 'Europe/London' } };

export async function post(base, path, body) {
    const answer = await fetch(base + path, { method: 'POST', body: JSON.stringify(body) });
    return { status: answer.status, json: await answer.json() };
}

export async function get(base, path) {
    const answer = await fetch(base + path);
    return { status: answer.status, json: await answer.json() };
}

export const note = (id, words) => ({ id, at: '2026-11-28T14:00:00Z', kind: 'note', text: words });

const faults = [];

/// Counts a fault unless `holds`.
export function expect(holds, what) {
    if (!holds) faults.push(what);
}

/// Says what was found and ends the process: 0 all well, 1 not.
export function finish(done) {
    for (const fault of faults) console.log(`not so: ${fault}`);
    console.log(`${done}; ${faults.length} faults`);
    process.exit(faults.length > 0 ? 1 : 0);
}

/// For CTest: this was not tried, and why.
export function skip(why) {
    console.log(`skipped: ${why}`);
    process.exit(77);
}
