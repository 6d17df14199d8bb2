// SPDX-License-Identifier: Apache-2.0
//
// Nothing that was acknowledged is lost: node tests/api/killed.mjs PROGRAM [TIMES] [SEED]     TIMES: else LOAFWRIGHT_KILLS, else 10
//
// On SQLite and on PostgreSQL, eight writers tell a bake what happens while the server is killed (SIGKILL)
// at a random moment, TIMES over on the same data, each time with another bake. After each restart every acknowledged event is there under its number, numbers
// have no gap, and what was not acknowledged can be told again and stands there once. Exit status: 0 all
// well, 1 something is lost or doubled.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { get, note, post, request } from './asking.mjs';
import { Cluster } from './cluster.mjs';
import { Serving } from './serving.mjs';

const [program, times = process.env.LOAFWRIGHT_KILLS ?? '10', seed = '20240917'] = process.argv.slice(2);
const writers = 8;

// Park and Miller's minimal generator: the same moments for the same seed.
let state = Number(seed) % 2147483647 || 1;
function random(below) {
    state = (state * 48271) % 2147483647;
    return state % below;
}

const folder = mkdtempSync(join(tmpdir(), 'loafwright-killed-'));
const words = ['--listen', '127.0.0.1:0', '--quiet'];
const acknowledged = new Map(); // id -> number
const open = new Map(); // id -> event, told and not answered
let made = 0;
let kept = 0;
let bake = '';
let cluster;

function fault(what) {
    console.log(what);
    cluster?.stop();
    rmSync(folder, { recursive: true, force: true });
    process.exit(1);
}

async function tell(base, events) {
    for (const event of events) open.set(event.id, event);
    const { status, json } = await post(base, `/api/v1/bakes/${bake}/events`, { events });
    if (status !== 200) throw new Error(`answered ${status}`);
    events.forEach((event, place) => {
        open.delete(event.id);
        const before = acknowledged.get(event.id);
        if (before !== undefined && before !== json.sequences[place]) fault(`${event.id} was ${before} and is ${json.sequences[place]}`);
        acknowledged.set(event.id, json.sequences[place]);
    });
}

async function write(base, isOver) {
    while (!isOver()) {
        const events = Array.from({ length: 1 + random(3) }, () => note(`e${++made}`, 'x'.repeat(random(200))));
        await tell(base, events).catch(() => {}); // the server is gone, or going
    }
}

async function check(base, round) {
    const { events, last } = (await get(base, `/api/v1/bakes/${bake}`)).json;
    if (last !== events.length) fault(`round ${round}: ${events.length} events and the last is ${last}`);
    const places = new Map(events.map((event, place) => [event.id, place + 1]));
    if (places.size !== events.length) fault(`round ${round}: an event stands there twice`);
    for (const [id, number] of acknowledged) {
        if (places.get(id) !== number) fault(`round ${round}: ${id} was acknowledged as ${number} and is ${places.get(id)}`);
    }
}

async function killedOn(data) {
    for (let round = 1; round <= Number(times) + 1; ++round) {
        const it = await Serving.start(program, words, folder, data);
        if (round > 1) {
            await check(it.base, round);
            for (const event of [...open.values()]) await tell(it.base, [event]);
            await check(it.base, round);
            kept += acknowledged.size;
        }
        if (round > Number(times)) {
            await it.stop();
            break;
        }
        acknowledged.clear();
        bake = `rye-${round}`;
        const begun = await post(it.base, '/api/v1/bakes', { id: bake, request });
        if (begun.status !== 201) fault(`the bake was answered ${begun.status}`);
        let isOver = false;
        const busy = Array.from({ length: writers }, () => write(it.base, () => isOver));
        await new Promise((resolve) => setTimeout(resolve, 20 + random(400)));
        it.child.kill('SIGKILL');
        await it.ended;
        isOver = true;
        await Promise.all(busy);
    }
}

await killedOn(undefined);
if (Cluster.isThere()) {
    cluster = new Cluster();
    await killedOn(cluster.make().address);
    cluster.stop();
} else {
    console.log('on SQLite alone: PostgreSQL is not installed');
}
console.log(`killed ${times} times on each: all ${kept} acknowledged events are there, once`);
rmSync(folder, { recursive: true, force: true });
