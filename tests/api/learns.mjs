// SPDX-License-Identifier: Apache-2.0
//
// From finished bakes to the next plan that uses what they taught: node tests/api/learns.mjs PROGRAM
//
// Five bakes in a kitchen whose prove takes half as long again as planned. The next plan's prove is longer,
// says that it is so by the kitchen's own bakes, and is nearer to what the kitchen wants; a bake that was
// begun before stays planned as it was; all of it is still so after a restart. Exit status: 0 all well, 1 not.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { expect, finish, get, post, request } from './asking.mjs';
import { Serving } from './serving.mjs';

const [program] = process.argv.slice(2);
const words = ['--listen', '127.0.0.1:0', '--quiet'];
const folder = mkdtempSync(join(tmpdir(), 'loafwright-learns-'));
const asked = { ...request, kitchen: { room_c: 20 } };

const minutes = (from, to) => (Date.parse(to) - Date.parse(from)) / 60_000;
const later = (time, by) => new Date(Date.parse(time) + by * 60_000).toISOString().replace('.000Z', 'Z');
const proveOf = (plan) => plan.stages.find((stage) => stage.title.startsWith('Prove'));
const lengthOf = (stage) => minutes(stage.start, stage.end.likely);

// Ticks every line on its time, but the prove takes `factor` times as long as planned.
async function bake(base, id, factor) {
    const day = { ...asked, now: '2026-11-28T08:00:00Z' };
    const begun = await post(base, '/api/v1/bakes', { id, request: day });
    if (begun.status !== 201) throw new Error(JSON.stringify(begun.json));
    const state = await get(base, `/api/v1/bakes/${id}/state?now=2026-11-28T08:00:00Z`);
    if (state.status !== 200) throw new Error(JSON.stringify(state.json));
    const { plan } = state.json;
    const events = [];
    let slip = 0;
    let number = 0;
    for (const stage of plan.stages.filter((one) => one.attention !== 'none')) {
        number += 1;
        if (number === 1) events.push({ id: 'b1', at: stage.start, kind: 'begun', bread: 0, stage: 1 });
        if (stage === proveOf(plan)) slip += (factor - 1) * lengthOf(stage);
        events.push({ id: `d${number}`, at: later(stage.end.likely, slip), kind: 'done', bread: 0, stage: number });
    }
    events.push({ id: 'told', at: later(plan.eat.likely, slip + 60), kind: 'told', bread: 0, stage: 1, crust: 'right', crumb: 'even', again: true });
    expect((await post(base, `/api/v1/bakes/${id}/events`, { events })).status === 200, `bake ${id} is told`);
    // Somebody looks at what the bake came to.
    expect((await get(base, `/api/v1/bakes/${id}/findings`)).status === 200, `bake ${id} has findings`);
    return plan;
}

let serving;
try {
    serving = await Serving.start(program, words, folder);
    let { base } = serving;
    const planned = async () => (await post(base, '/api/v1/plan', asked)).json.plan;
    const before = proveOf(await planned());
    const usual = lengthOf(before);
    expect(before.basis !== 'learned', 'before any bake nothing is learned');
    const wants = Math.round(usual * 1.5);
    const off = [];
    for (let n = 1; n <= 5; ++n) {
        // The kitchen wants the same minutes, whatever is planned.
        const next = lengthOf(proveOf(await planned()));
        off.push(Math.abs(wants - next));
        await bake(base, `bake-${n}`, wants / next);
    }
    const after = proveOf(await planned());
    expect(after.basis === 'learned', `the prove is ${after.basis}, and was to be learned`);
    expect(/your bakes|own bakes/.test(after.reason ?? ''), `the reason tells of the bakes: ${after.reason}`);
    const left = Math.abs(wants - lengthOf(after));
    expect(left <= off[0] / 2, `after five bakes ${left} min off, and ${off[0]} before`);

    // The bake before last was planned with what was known then.
    const kept = (await get(base, '/api/v1/bakes/bake-1/state?now=2026-11-28T08:00:00Z')).json.plan;
    expect(lengthOf(proveOf(kept)) === usual, 'the first bake keeps the plan it was begun with');
    await serving.stop();
    serving = await Serving.start(program, words, folder);
    base = serving.base;
    expect(lengthOf(proveOf(await planned())) === lengthOf(after), 'after a restart the same is known');
    console.log(`the prove: ${usual} min at first, ${wants} wanted, ${lengthOf(after)} after five bakes`);
} finally {
    await serving?.stop().catch(() => {});
    rmSync(folder, { recursive: true, force: true });
}
finish('five bakes and what they taught');
