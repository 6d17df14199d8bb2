// SPDX-License-Identifier: Apache-2.0
import { flushSync, mount, tick, unmount } from 'svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import App from '../src/App.svelte';
import { draft } from '../src/lib/draft.svelte';
import { go, screenOf } from '../src/lib/route.svelte';
import { screenPart } from '../src/lib/screens';
import { double, text, type Double } from './double';

let server: Double;
let app: Record<string, unknown> | null = null;

async function settle(): Promise<void> {
    for (let turn = 0; turn < 6; turn += 1) {
        await new Promise((resolve) => setTimeout(resolve, 0));
        await tick();
        flushSync();
    }
}

async function open(path: string): Promise<void> {
    const screen = screenOf(path);
    // What comes later in a browser is fetched here first.
    if (screen.name !== 'start' && screen.name !== 'nowhere') await screenPart(screen.name);
    go(path);
    app = mount(App, { target: document.body });
    await settle();
}

const shown = (): string => (document.body.textContent ?? '').replace(/\s+/g, ' ');
function button(name: string): HTMLElement {
    const found = [...document.querySelectorAll<HTMLElement>('button, a')].find((one) =>
        (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().startsWith(name),
    );
    if (!found) throw new Error(`no button "${name}" in: ${shown()}`);
    return found;
}
async function press(name: string): Promise<void> {
    button(name).click();
    await settle();
}

beforeEach(() => {
    vi.stubGlobal('scrollTo', () => undefined);
    server = double();
    draft.breads = [];
    draft.wish = { by: 'eat', at: '2026-11-28T16:30' };
});

afterEach(async () => {
    if (app) await unmount(app);
    app = null;
    vi.unstubAllGlobals();
});

it('a pasted recipe is read and its plan stands below at once', async () => {
    await open('/');
    const field = document.querySelector('textarea');
    if (!field) throw new Error('no field to paste into');
    field.value = text;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await press('Read it');
    expect(shown()).toContain('Made-up loaf');
    expect(shown()).toContain('Begin 13:00');
    expect(shown()).toContain('First rise, covered');
    const asked = server.requests.filter((one) => one.path === 'plan').at(-1)?.body;
    expect(asked).toMatchObject({ version: 1, eat_by: '2026-11-28T16:30', breads: [{ text }] });
});

it('words of a recipe are never taken for mark-up', async () => {
    draft.breads = [
        { id: 'a', name: '<img src=x onerror=alert(1)>', text: '<b>x</b>', answers: [], asked: {} },
    ];
    await open('/');
    expect(document.querySelector('img')).toBeNull();
    expect(document.querySelector('main b')?.textContent).not.toBe('x');
});

it('when it cannot be, the reason comes first and a way out changes the wish', async () => {
    server.outcome = {
        version: 1,
        impossible: {
            why: "You can't eat this by 14:00.",
            reasons: [],
            ways_out: [
                { change: 'eat at 15:40 today', eat: '2026-11-28T15:40:00+00:00', taken_by: [] },
            ],
        },
        questions: [],
    };
    draft.breads = [{ id: 'a', name: 'Loaf', text, answers: [], asked: {} }];
    await open('/');
    expect(shown()).toContain("You can't eat this by 14:00.");
    await press('eat at 15:40 today');
    expect(draft.wish).toEqual({ by: 'eat', at: '2026-11-28T15:40' });
    const asked = server.requests.filter((one) => one.path === 'plan').at(-1)?.body;
    expect(asked).toMatchObject({ eat_by: '2026-11-28T15:40' });
});

it('what was understood keeps every word of the text, and an answer goes with the recipe', async () => {
    draft.breads = [{ id: 'a', name: 'Loaf', text, answers: [], asked: {} }];
    await open('/recipe');
    expect(shown()).toContain(text);
    expect(shown()).toContain('left aside: made up');
    expect(shown()).toContain('How hot is the oven?');
    const field = document.querySelector<HTMLInputElement>('form input[type=text]');
    if (!field) throw new Error('no field for the answer');
    field.value = '230';
    field.dispatchEvent(new Event('input', { bubbles: true }));
    field.form?.dispatchEvent(new Event('submit', { bubbles: true, cancelable: true }));
    await settle();
    expect(draft.breads[0]?.answers).toEqual([{ key: 'oven-c', value: '230' }]);
    const asked = server.requests.filter((one) => one.path === 'read').at(-1)?.body;
    expect(asked).toMatchObject({ answers: [{ key: 'oven-c', value: '230' }] });
});

it('the times of the day move with the arrow keys', async () => {
    draft.breads = [{ id: 'a', name: 'Loaf', text, answers: [], asked: {} }];
    await open('/day');
    const eat = document.querySelector<HTMLElement>('[role=slider][aria-label=Eat]');
    eat?.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true }));
    await settle();
    expect(draft.wish).toEqual({ by: 'eat', at: '2026-11-28T17:30' });
    const begin = document.querySelector<HTMLElement>('[role=slider][aria-label=Begin]');
    begin?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowUp', bubbles: true }));
    await settle();
    expect(draft.wish).toEqual({ by: 'start', at: '2026-11-28T12:55' });
});

it('a ticked row is done at once, counts for the server, and can be taken back', async () => {
    await open('/bake/one');
    expect(document.querySelector('.now h2')?.textContent).toBe('Weigh and mix');
    await press('13:00 Weigh and mix');
    expect(document.querySelector('[role=checkbox]')?.getAttribute('aria-checked')).toBe('true');
    expect(server.events.map((event) => event.kind)).toEqual(['done']);
    await press('Take it back');
    expect(server.events.map((event) => event.kind)).toEqual(['done', 'taken_back']);
    expect(document.querySelector('[role=checkbox]')?.getAttribute('aria-checked')).toBe('false');
});

it('without a connection the bake says so and goes on', async () => {
    await open('/bake/two');
    server.down = true;
    await press('Done');
    expect(document.querySelector('.now h2')?.textContent).toBe('First rise, covered');
    expect(shown()).toContain('No connection.');
    expect(shown()).toContain('one tick waits to be sent');
});
