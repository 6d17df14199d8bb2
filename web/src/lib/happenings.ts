// SPDX-License-Identifier: Apache-2.0
//
// The events of a bake as screens make, name and take them back.
import type { BakeEvent, BakeState, Doing, Growth } from './api';
import { newId } from './ids';
import { stagesOf } from './meanwhile';
import { instant, stamp } from './times';

export interface Place {
    bread: number;
    stage: number;
}

type Told = BakeEvent extends infer One
    ? One extends BakeEvent
        ? Omit<One, 'id' | 'at' | 'bread' | 'stage'>
        : never
    : never;

export function happened(place: Place, told: Told, at: string = stamp(Date.now())): BakeEvent {
    return { id: newId(), at, bread: place.bread, stage: place.stage, ...told } as BakeEvent;
}

/// A local time as RFC 3339, with the offset that `sample` (a time of the same bake) has.
export function withOffset(localTime: string, sample: string): string {
    const offset = /(Z|[+-]\d\d:\d\d)$/.exec(sample)?.[0] ?? 'Z';
    return `${localTime.slice(0, 16)}:00${offset}`;
}

const five_minutes_ms = 300_000;

/// When to look again at what is not ready yet: when the plan has it ready, and not within the next
/// ten minutes (five in the oven), on a clock of fives.
export function lookAgain(doing: Doing, now: number): string {
    const least = (doing.attention === 'near' ? 1 : 2) * five_minutes_ms;
    const at = Math.max(instant(doing.end.likely), now + least);
    return stamp(Math.ceil(at / five_minutes_ms) * five_minutes_ms);
}

const growths: Record<Growth, string> = {
    little: 'a little',
    half_as_much: 'half as much again',
    doubled: 'doubled',
    more: 'more',
};

export function growthWords(growth: Growth): string {
    return growths[growth];
}

export const allGrowths = Object.keys(growths) as Growth[];

const measured: Record<string, string> = {
    dough: 'Dough',
    room: 'Room',
    oven: 'Oven',
    loaf: 'Inside the loaf',
};

export function measuredWords(of: string): string {
    return measured[of] ?? of;
}

export const allMeasured = Object.keys(measured) as ('dough' | 'room' | 'oven' | 'loaf')[];

type ToldEvent = Extract<BakeEvent, { kind: 'told' }>;
export type ToldPicks = Pick<ToldEvent, 'crust' | 'crumb' | 'again' | 'symptoms' | 'changed'>;
/// With every sign and every change once.
export type ToldOfAll = ToldPicks & { symptoms: string[]; changed: string[] };

/// What was said of a bread afterwards: the last word on each, and every sign and change once.
export function afterwards(events: BakeEvent[], bread: number): ToldOfAll {
    const all: ToldOfAll = { symptoms: [], changed: [] };
    for (const event of standing(events)) {
        if (event.kind !== 'told' || event.bread !== bread) continue;
        if (event.crust) all.crust = event.crust;
        if (event.crumb) all.crumb = event.crumb;
        if (event.again !== undefined) all.again = event.again;
        for (const sign of event.symptoms ?? []) {
            if (!all.symptoms.includes(sign)) all.symptoms.push(sign);
        }
        for (const change of event.changed ?? []) {
            if (!all.changed.includes(change)) all.changed.push(change);
        }
    }
    return all;
}

function toldWords(event: ToldEvent): string {
    const parts = [
        ...(event.crust ? [`crust ${event.crust}`] : []),
        ...(event.crumb ? [`crumb ${event.crumb}`] : []),
        ...(event.again === undefined ? [] : [event.again ? 'to be baked again' : 'not again']),
        ...(event.symptoms ?? []),
        ...(event.changed ?? []).map((change) => `done otherwise: ${change}`),
    ];
    return `How it was: ${parts.join(', ')}`;
}

/// The events that still count: neither taken back nor take-backs.
export function standing(events: BakeEvent[]): BakeEvent[] {
    const gone = new Set(
        events.flatMap((event) => (event.kind === 'taken_back' ? [event.undoes] : [])),
    );
    return events.filter((event) => event.kind !== 'taken_back' && !gone.has(event.id));
}

/// What can be taken back in one tap: the last thing that moved the bake.
export function lastMove(events: BakeEvent[]): BakeEvent | null {
    const moves = standing(events).filter((event) =>
        ['begun', 'done', 'act_done', 'not_ready', 'grown', 'trouble'].includes(event.kind),
    );
    return moves.at(-1) ?? null;
}

/// What an event was, in a few words.
export function eventWords(
    event: BakeEvent,
    state: BakeState,
    troubles: Map<string, string>,
): string {
    const stage = stagesOf(state, event.bread).find((one) => one.number === event.stage);
    const title = stage?.title ?? `Line ${event.stage}`;
    switch (event.kind) {
        case 'begun':
            return `Began: ${title}`;
        case 'done':
            return `Done: ${title}`;
        case 'not_ready':
            return `Not yet: ${title}`;
        case 'act_done':
            return `Done: ${stage?.acts[event.act]?.text ?? 'a small thing'}`;
        case 'grown':
            return `It has grown: ${growthWords(event.how)}`;
        case 'note':
            return event.text;
        case 'photo':
            return 'A photo';
        case 'temperature':
            return `${measuredWords(event.of)}: ${event.c} °C`;
        case 'trouble':
            return troubles.get(event.what) ?? 'Something happened';
        case 'told':
            return toldWords(event);
        case 'taken_back':
            return 'Taken back';
    }
}
