// SPDX-License-Identifier: Apache-2.0
//
// Opens many event streams of one bake, then tells it something several times and measures when the last
// listener has heard: node bench/server/streams.mjs ADDRESS PID BAKE [COUNT]
// Prints the memory of the server (VmRSS of PID) before and with the streams, and the times.
import { readFileSync } from 'node:fs';
import { connect } from 'node:net';

const [address, pid, bake, count = '2000'] = process.argv.slice(2);
const { hostname, port } = new URL(address);
const streams = Number(count);
const ticks = 20;

const memory = () => Number(readFileSync(`/proc/${pid}/status`, 'utf8').match(/VmRSS:\s+(\d+)/)[1]) / 1000;
// Processor time of the server in milliseconds.
const used = () => 10 * readFileSync(`/proc/${pid}/stat`, 'utf8').split(' ').slice(13, 15).reduce((sum, ticks) => sum + Number(ticks), 0);
const before = memory();
let waiting = 0;
let heard = () => {};
let lost = 0;

function open() {
    return new Promise((resolve, reject) => {
        const socket = connect({ host: hostname, port: Number(port) }, () => {
            socket.write(`GET /api/v1/bakes/${bake}/stream?after=1000000000 HTTP/1.1\r\nHost: ${hostname}\r\n\r\n`);
        });
        socket.setNoDelay(true);
        let text = '';
        let isOpen = false;
        socket.on('data', (bytes) => {
            text += bytes.toString('latin1');
            if (!isOpen && text.includes('\n\n')) {
                isOpen = true;
                resolve(socket);
            }
            for (let at = text.indexOf('"tick-'); at >= 0; at = text.indexOf('"tick-')) {
                text = text.slice(at + 6);
                if (--waiting === 0) heard();
            }
            text = text.slice(-8);
        });
        socket.on('error', reject);
        socket.on('close', () => ++lost);
    });
}

const sockets = [];
for (let n = 0; n < streams; n += 100) {
    sockets.push(...(await Promise.all(Array.from({ length: Math.min(100, streams - n) }, open))));
}
await new Promise((resolve) => setTimeout(resolve, 500));
const loaded = memory();
const times = [];
const usedBefore = used();
for (let tick = 0; tick < ticks; ++tick) {
    waiting = streams;
    const all = new Promise((resolve) => (heard = resolve));
    const begun = performance.now();
    const answer = await fetch(new URL(`/api/v1/bakes/${bake}/events`, address), {
        method: 'POST',
        body: JSON.stringify({ events: [{ id: `tick-${process.pid}-${tick}`, at: '2026-11-28T14:00:00Z', kind: 'done', stage: 1 }] }),
    });
    if (answer.status !== 200) throw new Error(`the tick was answered ${answer.status}`);
    await Promise.race([all, new Promise((_, reject) => setTimeout(() => reject(new Error(`${waiting} did not hear`)), 10_000))]);
    times.push(performance.now() - begun);
}
times.sort((a, b) => a - b);
console.log(
    `streams: ${streams} open, ${lost} lost, ${loaded.toFixed(0)} MB with them, ${before.toFixed(0)} MB before; ` +
        `a tick reached all in ${times[ticks / 2].toFixed(0)} ms (${times[0].toFixed(0)} to ${times[ticks - 1].toFixed(0)}, ${ticks} ticks, from the request on), ` +
        `with ${((used() - usedBefore) / ticks).toFixed(0)} ms of the server's processor time`,
);
for (const socket of sockets) socket.destroy();
process.exit(loaded < 200 && times[ticks - 1] < 250 ? 0 : 1);
