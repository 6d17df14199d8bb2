// SPDX-License-Identifier: Apache-2.0
//
// The bake that is being planned: which breads, when, in which kitchen, on what day. Every screen
// before the bake shows and changes this one thing; its plan follows each change.
import type {
    Answer,
    BakeRequest,
    BreadWish,
    DayHabits,
    Kitchen,
    KeptRecipe,
    PageOptions,
    Planned,
    PlanOutcome,
    Reading,
} from './api';
import * as engine from './engine';
import { newId } from './ids';
import * as keep from './keep';
import { recallHere, rememberHere } from './local';
import { newest } from './newest';
import { dateAfter, localNow, stamp } from './times';
import { troubleWords } from './trouble';

export interface DraftBread extends KeptRecipe, BreadWish {
    /// The question each answer was given to, so that it can be shown and changed.
    asked: Record<string, string>;
}

export interface Wish {
    by: 'eat' | 'start';
    at: string; // local
}

interface Draft {
    breads: DraftBread[];
    wish: Wish;
    kitchen: Kitchen;
    day: DayHabits;
    page: PageOptions;
}

// Supper today while there is time for it, else tomorrow's.
function usualWish(now: number): Wish {
    const local = localNow(now);
    const date = Number(local.slice(11, 13)) < 12 ? local : dateAfter(local, 1);
    return { by: 'eat', at: `${date.slice(0, 10)}T18:30` };
}

// Asked for only once there is something to plan: browsers take long over it, and the first screen
// needs none.
let zone = '';
function zoneHere(): string {
    zone ||= new Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC';
    return zone;
}

function recalled(): Draft {
    const kept = recallHere<Partial<Draft>>('draft', {});
    const wish = kept.wish;
    return {
        breads: kept.breads ?? [],
        // A wish of yesterday is no wish any more.
        wish: wish && wish.at > localNow(Date.now()) ? wish : usualWish(Date.now()),
        kitchen: kept.kitchen ?? {},
        day: kept.day ?? {},
        page: kept.page ?? {},
    };
}

export const draft: Draft = $state(recalled());

export function request(): BakeRequest {
    const whole = $state.snapshot(draft);
    return {
        version: 1,
        breads: whole.breads.map((bread, index) => ({
            name: bread.name || `Bread ${index + 1}`,
            text: bread.text,
            answers: bread.answers,
            ...engine.wishOf(bread),
        })),
        kitchen: whole.kitchen,
        day: inZone(whole.day),
        ...(whole.wish.by === 'eat' ? { eat_by: whole.wish.at } : { start: whole.wish.at }),
        page: whole.page,
    };
}

function inZone(day: DayHabits): DayHabits {
    return { zone: zoneHere(), ...day };
}

/// What was answered last. Answers are long and never changed in place, so they are kept as they came.
class Answers {
    outcome = $state.raw<PlanOutcome | null>(null);
    /// The last plan that could be, kept in sight while another is looked for.
    plan = $state.raw<Planned | null>(null);
    readings = $state.raw<Record<string, Reading>>({});
    /// What stands in the way of a plan, in words.
    trouble = $state<string | null>(null);
    /// A plan for the newest wish is on its way.
    busy = $state(false);
}

export const answers = new Answers();

export const withoutPlan = 'The plan is made there; it comes when the connection is back.';

/// This device's clock, in whole minutes, goes with what is asked: "today" is the baker's.
export function withNow(asked: BakeRequest): BakeRequest {
    return { ...asked, now: stamp(Math.floor(Date.now() / 60_000) * 60_000) };
}

let lastAsked: BakeRequest | null = null;
const planner = newest(
    (asked: BakeRequest) => engine.plan(withNow(asked)),
    (outcome, asked) => {
        answers.outcome = outcome;
        if ('plan' in outcome) answers.plan = outcome;
        answers.trouble = null;
        answers.busy = asked !== lastAsked;
    },
    (cause, asked) => {
        answers.trouble = troubleWords(cause, withoutPlan);
        answers.busy = asked !== lastAsked;
        if (cause instanceof keep.Refused) answers.outcome = null;
    },
);

const readers = new Map<string, ReturnType<typeof readerOf>>();
function readerOf(id: string) {
    return newest(
        (bread: DraftBread) => engine.read(bread.text, bread.name, bread.answers),
        (reading, bread) => {
            answers.readings = { ...answers.readings, [id]: reading };
            const kept = draft.breads.find((one) => one.id === id);
            const title = reading.recipe.title;
            if (kept && title !== '' && kept.name !== title && kept.text === bread.text) {
                kept.name = title;
            }
        },
        (cause) => {
            readLast.delete(id);
            answers.trouble = troubleWords(cause, withoutPlan);
        },
    );
}

// What was last asked about each bread, so that a new name alone is not read again.
const readLast = new Map<string, string>();

function readBread(bread: DraftBread): void {
    const asked = JSON.stringify([bread.text, bread.answers]);
    if (readLast.get(bread.id) === asked) return;
    readLast.set(bread.id, asked);
    let reader = readers.get(bread.id);
    if (!reader) {
        reader = readerOf(bread.id);
        readers.set(bread.id, reader);
    }
    reader.ask($state.snapshot(bread));
}

function follow(): void {
    if (draft.breads.length === 0) {
        answers.outcome = null;
        answers.plan = null;
        answers.trouble = null;
        return;
    }
    answers.busy = true;
    lastAsked = request();
    planner.ask(lastAsked);
}

/// Makes the plan follow the draft for as long as the pages are open.
export function followDraft(): () => void {
    return $effect.root(() => {
        $effect(() => {
            const whole = $state.snapshot(draft);
            // Not at every step of a finger, but before the page is left.
            const write = (): void => rememberHere('draft', whole);
            const timer = setTimeout(write, 250);
            addEventListener('pagehide', write);
            return () => {
                clearTimeout(timer);
                removeEventListener('pagehide', write);
            };
        });
        // It reads the whole request, so that every part of it counts as a change.
        $effect(follow);
        $effect(() => {
            for (const bread of draft.breads) readBread(bread);
        });
    });
}

/// Asks again: after the connection was lost, say.
export function askAgain(): void {
    for (const bread of draft.breads) readBread(bread);
    follow();
}

const keepLater = new Map<string, ReturnType<typeof setTimeout>>();

// Kept a moment after the last change; without a connection the draft itself still has it.
function soon(key: string, act: () => Promise<void>): void {
    const before = keepLater.get(key);
    if (before) clearTimeout(before);
    keepLater.set(
        key,
        setTimeout(() => {
            keepLater.delete(key);
            act().catch(() => undefined);
        }, 600),
    );
}

export function keepBread(bread: DraftBread): void {
    soon(`bread ${bread.id}`, () => {
        const { id, name, text, answers: given } = $state.snapshot(bread);
        return keep.keepRecipe({ id, name: name || 'A bread', text, answers: given });
    });
}

export function keepHabits(): void {
    soon('settings', () =>
        keep.keepSettings($state.snapshot(draft.kitchen), inZone($state.snapshot(draft.day))),
    );
}

/// Takes a pasted or dropped text as a new bread of this bake.
export function bring(text: string, beside = false): void {
    const bread: DraftBread = { id: newId(), name: '', text, answers: [], asked: {} };
    draft.breads = beside ? [...draft.breads, bread] : [bread];
    const brought = draft.breads.find((one) => one.id === bread.id);
    if (brought) keepBread(brought);
}

export function take(kept: KeptRecipe, beside = false): void {
    if (draft.breads.some((one) => one.id === kept.id)) return;
    const bread: DraftBread = { ...kept, asked: {} };
    draft.breads = beside ? [...draft.breads, bread] : [bread];
}

export function putAway(id: string): void {
    draft.breads = draft.breads.filter((one) => one.id !== id);
    readers.delete(id);
    readLast.delete(id);
}

/// Answers a question about one bread; an empty value takes the answer back.
export function answer(bread: DraftBread, key: string, value: string, asked: string): void {
    const others: Answer[] = bread.answers.filter((one) => one.key !== key);
    bread.answers = value === '' ? others : [...others, { key, value }];
    if (value !== '') bread.asked[key] = asked;
    keepBread(bread);
}

let habitsTaken = false;

/// What the house keeps outranks what this browser happens to remember, once, when it begins.
export function takeHabits(settings: { kitchen?: Kitchen; day?: DayHabits } | null): void {
    if (!settings || habitsTaken) return;
    habitsTaken = true;
    draft.kitchen = settings.kitchen ?? {};
    draft.day = settings.day ?? {};
}
