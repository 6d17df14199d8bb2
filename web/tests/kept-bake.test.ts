// SPDX-License-Identifier: Apache-2.0
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import type { BakeEvent } from '../src/lib/api';
import { happened } from '../src/lib/happenings';
import { KeptBake, type BakeView } from '../src/lib/kept-bake';
import { double, type Double } from './double';

let server: Double;
let keeper: KeptBake;
let view: BakeView | null = null;
let number = 0;

beforeEach(() => {
    vi.useFakeTimers({ now: Date.parse('2026-11-28T13:05:00Z') });
    server = double();
    number += 1;
    keeper = new KeptBake(`bake-${number}`, (next) => {
        view = next;
    });
});

afterEach(() => {
    keeper.close();
    view = null;
    vi.useRealTimers();
    vi.unstubAllGlobals();
});

const settle = (): Promise<void> => vi.advanceTimersByTimeAsync(50).then(() => undefined);
const done = (): BakeEvent => happened({ bread: 0, stage: 1 }, { kind: 'done' });

it('shows a tick at once and knows when the server has it', async () => {
    await keeper.open();
    await settle();
    const told = keeper.tell(done());
    expect(view?.untold).toHaveLength(1);
    await told;
    await settle();
    expect(server.events).toHaveLength(1);
    expect(view?.waiting).toBe(0);
    expect(view?.untold).toHaveLength(0);
    expect(view?.state?.last).toBe(1);
});

it('keeps ticks while there is no network and sends them, in order, once it is back', async () => {
    await keeper.open();
    await settle();
    server.down = true;
    const first = done();
    const second = happened({ bread: 0, stage: 2 }, { kind: 'done' });
    await keeper.tell(first);
    await keeper.tell(second);
    expect(view?.online).toBe(false);
    expect(view?.untold.map((event) => event.id)).toEqual([first.id, second.id]);
    server.down = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.events.map((event) => event.id)).toEqual([first.id, second.id]);
    expect(view?.online).toBe(true);
    expect(view?.waiting).toBe(0);
});

it('sends again under the same id when an answer was lost, so that it counts once', async () => {
    await keeper.open();
    await settle();
    server.loseAnswers = 2;
    const tick = done();
    await keeper.tell(tick);
    await vi.advanceTimersByTimeAsync(30_000);
    const sent = server.requests.filter((one) => one.path.endsWith('/events'));
    expect(sent.length).toBeGreaterThanOrEqual(3);
    expect(server.events.map((event) => event.id)).toEqual([tick.id]);
    expect(view?.waiting).toBe(0);
});

it('finds what waits again after the page was closed', async () => {
    await keeper.open();
    await settle();
    server.down = true;
    const tick = done();
    await keeper.tell(tick);
    keeper.close();
    const again = new KeptBake(keeper.id, (next) => {
        view = next;
    });
    await again.open();
    await settle();
    // The last state is there as well, though nobody answers.
    expect(view?.state?.plan.stages).toHaveLength(4);
    expect(view?.untold.map((event) => event.id)).toEqual([tick.id]);
    server.down = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.events.map((event) => event.id)).toEqual([tick.id]);
    again.close();
});

it('asks for a moment that holds what a screen with a faster clock has told', async () => {
    await keeper.open();
    await settle();
    const ahead = (seconds: number): BakeEvent =>
        happened(
            { bread: 0, stage: 1 },
            { kind: 'note', text: 'ahead' },
            new Date(Date.now() + seconds * 1000).toISOString(),
        );
    const last = (): string | undefined =>
        server.requests.findLast((one) => one.path.includes('/state'))?.path.split('now=')[1];
    await keeper.tell(ahead(30));
    await settle();
    expect(last()).toBe(encodeURIComponent('2026-11-28T13:05:30Z'));
    // A clock that is wrong by an hour is not followed.
    await keeper.tell(ahead(3600));
    await settle();
    expect(last()).toBe(encodeURIComponent('2026-11-28T13:05:30Z'));
});

it('does not let one thing the server refuses hold up the others', async () => {
    await keeper.open();
    await settle();
    server.down = true;
    await keeper.tell(happened({ bread: 0, stage: 1 }, { kind: 'note', text: 'refuse me' }));
    const tick = done();
    await keeper.tell(tick);
    server.down = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.events.map((event) => event.id)).toEqual([tick.id]);
    expect(view?.waiting).toBe(0);
    expect(view?.refused).toContain('no');
});
