// SPDX-License-Identifier: Apache-2.0
//
// When the store cannot keep anything, the answer is 503 in clear words, what was kept can be read, and
// all is well again once the cause has gone: node tests/api/trouble.mjs PROGRAM
//
// A real disk that is full, and a real PostgreSQL that only lets read. Exit status: 0 all well, 1 not,
// 77 neither can be had here.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, openSync, rmSync, writeSync, closeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { expect, finish, get, note, post, request, skip } from './asking.mjs';
import { Cluster } from './cluster.mjs';
import { Serving } from './serving.mjs';

const [program] = process.argv.slice(2);
const words = ['--listen', '127.0.0.1:0', '--quiet'];
const tried = [];

function isClear(answer, code, about) {
    expect(answer.status === 503, `${about}: 503, not ${answer.status}`);
    const told = answer.json.error?.[0] ?? {};
    expect(told.code === code, `${about}: ${code}, not ${told.code}`);
    expect(told.severity === 'error' && told.what?.length > 10 && told.do_this?.length > 10, `${about}: says what, and what to do`);
}

async function allIsThere(base, ids, about) {
    const { status, json } = await get(base, '/api/v1/bakes/loaf');
    expect(status === 200, `${about}: the bake can be read, not ${status}`);
    const there = (json.events ?? []).map((event) => event.id);
    expect(JSON.stringify(there) === JSON.stringify(ids), `${about}: ${ids.length} events in order, and there are ${there.length}`);
}

function fill(file) {
    const rest = openSync(file, 'w');
    try {
        for (;;) writeSync(rest, Buffer.alloc(4096, 'x'));
    } catch (full) {
        if (full.code !== 'ENOSPC') throw full;
    }
    closeSync(rest);
}

async function onASmallDisk() {
    const disk = mkdtempSync(join(tmpdir(), 'loafwright-disk-'));
    try {
        execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=3m', 'tmpfs', disk], { stdio: 'ignore' });
    } catch {
        rmSync(disk, { recursive: true, force: true });
        console.log('not tried: only root may mount a small disk');
        return;
    }
    tried.push('a full disk');
    let serving;
    try {
        serving = await Serving.start(program, words, disk);
        const { base } = serving;
        expect((await post(base, '/api/v1/bakes', { id: 'loaf', request })).status === 201, 'a bake begins');
        const kept = [];
        const tell = async (id) => {
            const answer = await post(base, '/api/v1/bakes/loaf/events', { events: [note(id, 'x'.repeat(3000))] });
            if (answer.status === 200) kept.push(id);
            return answer;
        };
        await tell('first');
        fill(join(disk, 'rest'));
        let refused;
        for (let n = 0; n < 1000 && !refused; ++n) {
            const answer = await tell(`more-${n}`);
            if (answer.status !== 200) refused = answer;
        }
        isClear(refused ?? { status: 200, json: {} }, 'store_full', 'an event on a full disk');
        const photo = await fetch(`${base}/api/v1/photos`, { method: 'POST', headers: { 'Content-Type': 'image/png' }, body: picture() });
        isClear({ status: photo.status, json: await photo.json() }, 'store_full', 'a photo on a full disk');
        await allIsThere(base, kept, 'while the disk is full');
        expect((await get(base, '/api/v1/bakes/loaf/findings')).status === 200, 'what it came to can be asked all the same');
        expect((await get(base, '/healthz')).status === 200, 'it is still well itself');
        rmSync(join(disk, 'rest'));
        expect((await tell('after')).status === 200, 'an event is kept again when there is room');
        await allIsThere(base, kept, 'when there is room again');
        serving.child.kill('SIGKILL');
        await serving.ended;
        serving = await Serving.start(program, words, disk);
        await allIsThere(serving.base, kept, 'after a start anew');
    } finally {
        await serving?.stop().catch(() => {});
        execFileSync('umount', [disk]);
        rmSync(disk, { recursive: true, force: true });
    }
}

// The head of a PNG (W3C, 5.2 and 11.2.2) and more bytes than the disk has left.
function picture() {
    const bytes = Buffer.alloc(500000, 'x');
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]).copy(bytes);
    return bytes;
}

async function whereOneMayOnlyRead() {
    if (!Cluster.isThere()) {
        console.log('not tried: PostgreSQL is not installed');
        return;
    }
    tried.push('a database that may only be read');
    const cluster = new Cluster();
    const folder = mkdtempSync(join(tmpdir(), 'loafwright-trouble-'));
    let serving;
    try {
        const { name, address } = cluster.make();
        serving = await Serving.start(program, words, folder, address);
        const { base } = serving;
        await post(base, '/api/v1/bakes', { id: 'loaf', request });
        const tell = (id) => post(base, '/api/v1/bakes/loaf/events', { events: [note(id, 'it smells of yeast')] });
        expect((await tell('first')).status === 200, 'an event is kept');
        const letOnlyRead = (only) => {
            cluster.execute('postgres', `ALTER DATABASE ${name} SET default_transaction_read_only = ${only}`);
            // For those that have connected before, too.
            cluster.execute('postgres', `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '${name}'`);
        };
        letOnlyRead('on');
        let answer = await tell('second');
        for (let n = 0; n < 20 && answer.json.error?.[0]?.code === 'store_unreachable'; ++n) answer = await tell('second');
        isClear(answer, 'store_read_only', 'an event where one may only read');
        await allIsThere(base, ['first'], 'while one may only read');
        letOnlyRead('off');
        answer = await tell('second');
        for (let n = 0; n < 50 && answer.status !== 200; ++n) {
            await new Promise((resolve) => setTimeout(resolve, 100));
            answer = await tell('second');
        }
        expect(answer.status === 200, 'an event is kept again');
        await allIsThere(base, ['first', 'second'], 'when one may write again');
    } finally {
        await serving?.stop().catch(() => {});
        cluster.stop();
        rmSync(folder, { recursive: true, force: true });
    }
}

await onASmallDisk();
await whereOneMayOnlyRead();
if (tried.length === 0) skip('neither a small disk nor PostgreSQL can be had here');
finish(`tried ${tried.join(' and ')}`);
