// SPDX-License-Identifier: Apache-2.0
//
// A stand-in for the server, for tests of screens alone: it answers as the contract says and
// remembers what it was sent. Journeys on the real server are in ../../tests/pages.
import { vi } from 'vitest';

import type { BakeEvent, BakeState, Plan, PlanOutcome, Reading, Sheet } from '../src/lib/api';

export const text = 'Mix it all. Let it rise for 1 h. Bake for 30 minutes at 220°C.';

export const plan: Plan = {
    start: '2026-11-28T13:00:00+00:00',
    out_of_oven: '2026-11-28T15:00:00+00:00',
    cut_from: '2026-11-28T16:00:00+00:00',
    best_from: '2026-11-28T17:00:00+00:00',
    eat: {
        low: '2026-11-28T16:00:00+00:00',
        likely: '2026-11-28T16:30:00+00:00',
        high: '2026-11-28T17:00:00+00:00',
    },
    total_minutes: 210,
    hands_on_minutes: 25,
    stages: [
        stage(1, 'Weigh and mix', 'hands', '13:00', '13:20', null),
        {
            ...stage(2, 'First rise, covered', 'wait', '13:20', '14:20', '14:10'),
            acts: [{ at: '2026-11-28T14:00:00+00:00', text: 'oven on, 220 °C', step: null }],
        },
        stage(3, 'Bake', 'near', '14:20', '14:50', '14:45'),
        stage(4, 'Eat', 'none', '16:30', '16:30', null),
    ],
    free: [],
    warnings: [],
    cautions: [],
};

function stage(
    number: number,
    title: string,
    attention: Plan['stages'][number]['attention'],
    from: string,
    to: string,
    look: string | null,
): Plan['stages'][number] {
    const at = (clock: string): string => `2026-11-28T${clock}:00+00:00`;
    return {
        number,
        bread: 'Made-up loaf',
        title,
        attention,
        start: at(from),
        end: { low: at(to), likely: at(to), high: at(to) },
        look_from: look ? at(look) : null,
        cue: number === 2 ? { text: 'doubled', span: null } : null,
        acts: [],
        reminders: [],
        steps: [number - 1],
    };
}

export const sheet: Sheet = {
    kind: 'bread',
    title: 'Made-up loaf',
    eat: { words: 'eat at', time: '16:30' },
    begin: { words: 'Begin', time: '13:00' },
    free: '25 minutes of your hands.',
    weigh: ['500 g flour'],
    ready: ['bowl'],
    ahead: [],
    stages: plan.stages.map((one) => ({
        number: one.number,
        time: one.start.slice(11, 16),
        bread: null,
        title: one.title,
        length: null,
        also: null,
        box: one.attention !== 'none',
        acts: [],
        cue: one.cue ? `ready when ${one.cue.text}` : null,
        cue_is_ours: false,
        reminders: [],
        normal: null,
    })),
    notes: [],
    warnings: [],
    cautions: [],
    questions: [],
};

export const reading: Reading = {
    version: 1,
    recipe: { title: 'Made-up loaf', pieces: null, ingredients: [], steps: [], changes: [] },
    unread: [{ text, span: [0, new TextEncoder().encode(text).length], why: 'made up', at: '0' }],
    questions: [{ key: 'oven-c', about: 'oven', ask: 'How hot is the oven?', default: '220' }],
    remarks: [],
};

export function stateAt(last: number, now: string): BakeState {
    return {
        version: 1,
        plan,
        sheets: [sheet],
        change: '',
        last,
        moment: {
            now,
            finished: false,
            free_until: null,
            say: 'Weigh and mix.',
            doing: [
                {
                    bread: 0,
                    bread_name: 'Made-up loaf',
                    stage: 1,
                    title: 'Weigh and mix',
                    attention: 'hands',
                    state: 'running',
                    begun: plan.start,
                    end: plan.stages[0]?.end ?? plan.eat,
                    look_from: null,
                    free_until: null,
                    cue: null,
                    cue_is_ours: false,
                    reminders: [],
                    acts: [],
                    grows: false,
                },
            ],
            next: [
                {
                    bread: 0,
                    bread_name: 'Made-up loaf',
                    stage: 2,
                    title: 'First rise, covered',
                    at: '2026-11-28T13:20:00+00:00',
                    attention: 'wait',
                },
            ],
            alarms: [],
            lines: [1, 2, 3].map((number) => ({
                bread: 0,
                stage: number,
                begun: number === 1 ? plan.start : null,
                done: null,
                acts_done: [],
            })),
            eat: plan.eat,
            remedies: [],
        },
    };
}

export interface Double {
    requests: { method: string; path: string; body: unknown }[];
    events: BakeEvent[];
    outcome: PlanOutcome;
    /// No answer to anything.
    down: boolean;
    /// The event is kept and its answer lost, so many times.
    loseAnswers: number;
}

export function double(): Double {
    const server: Double = {
        requests: [],
        events: [],
        outcome: { version: 1, plan, sheets: [sheet], questions: [] },
        down: false,
        loseAnswers: 0,
    };
    const answer = (status: number, body: unknown): Response =>
        new Response(JSON.stringify(body), {
            status,
            headers: { 'Content-Type': 'application/json' },
        });

    vi.stubGlobal('fetch', async (path: string, init: RequestInit = {}) => {
        if (server.down) throw new TypeError('no network');
        const method = init.method ?? 'GET';
        const body: unknown = typeof init.body === 'string' ? JSON.parse(init.body) : null;
        const short = path.replace('/api/v1/', '');
        server.requests.push({ method, path: short, body });
        if (short === 'plan') return answer(200, server.outcome);
        if (short === 'read') return answer(200, reading);
        if (short === 'help') {
            return answer(200, {
                troubles: [
                    {
                        key: 'no_salt',
                        tells: 'No salt in it',
                        remedy: 'Knead it in.',
                        asks_until: false,
                        source: 'us',
                    },
                ],
            });
        }
        if (short === 'notebook') return answer(200, { version: 1, recipes: [], settings: null });
        if (short === 'bakes' && method === 'GET') return answer(200, { bakes: [] });
        if (short.includes('/state')) {
            const now = decodeURIComponent(short.split('now=')[1] ?? '');
            const state = stateAt(server.events.length, now);
            const gone = server.events.map((one) => (one.kind === 'taken_back' ? one.undoes : ''));
            for (const event of server.events) {
                if (event.kind !== 'done' || gone.includes(event.id)) continue;
                const line = state.moment.lines[event.stage - 1];
                if (line) line.done = event.at;
            }
            return answer(200, state);
        }
        if (short.endsWith('/events')) {
            const sent = (body as { events: BakeEvent[] }).events;
            if (sent.some((event) => event.kind === 'note' && event.text === 'refuse me')) {
                return answer(400, {
                    version: 1,
                    error: [{ code: 'x', severity: 'error', what: 'no', where: '', do_this: '' }],
                });
            }
            const sequences = sent.map((event) => {
                const known = server.events.findIndex((one) => one.id === event.id);
                if (known >= 0) return known + 1;
                server.events.push(event);
                return server.events.length;
            });
            if (server.loseAnswers > 0) {
                server.loseAnswers -= 1;
                throw new TypeError('the answer was lost');
            }
            return answer(200, { sequences, last: server.events.length });
        }
        return answer(200, {});
    });
    return server;
}
