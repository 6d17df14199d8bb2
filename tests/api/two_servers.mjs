// SPDX-License-Identifier: Apache-2.0
//
// Two server processes on one PostgreSQL behave as one: node tests/api/two_servers.mjs PROGRAM
//
// What is told to either reaches the streams of both, in one order under one numbering; the same event
// told to both counts once; a stream that broke off at one goes on at the other from its last number.
// Exit status: 0 all well, 1 not, 77 PostgreSQL is not installed.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { expect, finish, get, note, post, request, skip } from './asking.mjs';
import { Cluster } from './cluster.mjs';
import { Serving } from './serving.mjs';

const [program] = process.argv.slice(2);
if (!Cluster.isThere()) skip('PostgreSQL is not installed');
const words = ['--listen', '127.0.0.1:0', '--quiet'];

// A stream of server-sent events (WHATWG HTML, 9.2): the numbers and ids that came, in order.
class Stream {
    constructor(base, after) {
        this.came = [];
        this.stopper = new AbortController();
        const headers = after === undefined ? {} : { 'Last-Event-ID': String(after) };
        this.over = fetch(`${base}/api/v1/bakes/loaf/stream`, { headers: { Accept: 'text/event-stream', ...headers }, signal: this.stopper.signal })
            .then(async (answer) => {
                let text = '';
                for await (const bytes of answer.body) {
                    text += Buffer.from(bytes).toString();
                    for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
                        this.take(text.slice(0, end));
                        text = text.slice(end + 2);
                    }
                }
            })
            // Stopped here, or the server is gone: what has not come is missed by who waits for it.
            .catch(() => {});
    }

    take(block) {
        const field = (name) => block.match(new RegExp(`^${name}: ?(.*)$`, 'm'))?.[1];
        if (field('data') && field('id')) this.came.push({ number: Number(field('id')), id: JSON.parse(field('data')).id, at: Date.now() });
    }

    async until(count) {
        for (let n = 0; n < 1000 && this.came.length < count; ++n) await new Promise((resolve) => setTimeout(resolve, 10));
        return this.came.length >= count;
    }

    async stop() {
        this.stopper.abort();
        await this.over;
    }
}

const cluster = new Cluster();
const folder = mkdtempSync(join(tmpdir(), 'loafwright-two-'));
const { address } = cluster.make();
const [one, other] = [await Serving.start(program, words, folder, address), await Serving.start(program, words, folder, address)];
try {
    const tell = (base, events) => post(base, '/api/v1/bakes/loaf/events', { events });
    expect((await post(one.base, '/api/v1/bakes', { id: 'loaf', request })).status === 201, 'a bake begins at one');
    expect((await get(other.base, '/api/v1/bakes/loaf')).status === 200, 'the other knows it');

    const streams = [new Stream(one.base), new Stream(other.base)];
    await new Promise((resolve) => setTimeout(resolve, 300));
    const total = 200;
    // Both are told at once, and every tenth event both of them.
    await Promise.all(
        [one, other].map(async ({ base }, side) => {
            for (let n = 0; n < total / 2; ++n) {
                const id = n % 10 === 0 ? `both-${n}` : `${side}-${n}`;
                const answer = await tell(base, [note(id, 'it smells of yeast')]);
                if (answer.status !== 200) expect(false, `${id} was answered ${answer.status}`);
            }
        }),
    );
    const different = total - total / 2 / 10;
    for (const stream of streams) expect(await stream.until(different), `${different} events on a stream, and ${stream.came.length} came`);
    const order = (stream) => JSON.stringify(stream.came.map(({ number, id }) => [number, id]));
    expect(order(streams[0]) === order(streams[1]), 'both streams say the same in the same order');
    expect(streams[0].came.every(({ number }, place) => number === place + 1), 'numbers have no gap');
    expect(new Set(streams[0].came.map(({ id }) => id)).size === different, 'nothing came twice');
    const [here, there] = await Promise.all([one, other].map(({ base }) => get(base, '/api/v1/bakes/loaf')));
    expect(JSON.stringify(here.json.events) === JSON.stringify(there.json.events), 'both say the same when asked');
    expect(JSON.stringify(here.json.moment) === JSON.stringify(there.json.moment), 'and the same of what to do now');

    // One of them dies; who listened there goes on at the other.
    const last = streams[0].came.at(-1).number;
    one.child.kill('SIGKILL');
    await one.ended;
    await streams[0].over;
    const answer = await tell(other.base, [note('alone', 'still rising')]);
    expect(answer.json.sequences?.[0] === last + 1, 'the numbering goes on');
    const again = new Stream(other.base, last);
    expect(await again.until(1), 'a stream goes on at the other');
    expect(again.came[0]?.number === last + 1 && again.came[0]?.id === 'alone', 'from where it broke off');
    await again.stop();
    await streams[1].stop();
} finally {
    one.child.kill('SIGKILL');
    await other.stop();
    cluster.stop();
    rmSync(folder, { recursive: true, force: true });
}
finish('two servers told 200 events at once');
