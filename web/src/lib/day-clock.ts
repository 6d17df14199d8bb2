// SPDX-License-Identifier: Apache-2.0
//
// Where things stand on the upright clock of the day: one pixel scale, times as local numbers
// (lib/times.ts), no bread.
import type { DaySpan, Plan } from './api';
import { dateAfter, fromLocal, local, toLocal } from './times';

const hour_ms = 3_600_000;
const minute_ms = 60_000;

/// What the words of one stage take: enough for a finger.
export const label_pixels = 44;

export interface Range {
    from: number;
    to: number;
    pixelsPerHour: number;
}

// How far beyond the stretch a sleep or an errand may begin or end, and still be drawn.
const reach_ms = 4 * hour_ms;

/// The stretch of time to draw: the plan and the wish, with room to drag before and after, and the
/// ends of sleeps, errands and others' bakes that are near enough to be dragged there.
export function rangeOf(plan: Plan | null, wish: string, spans: DaySpan[] = []): Range {
    const at = fromLocal(wish);
    const times = plan ? [fromLocal(plan.start), fromLocal(plan.eat.likely), at] : [at];
    let from = Math.floor(Math.min(...times) / hour_ms) * hour_ms - (plan ? 2 : 8) * hour_ms;
    let to = Math.ceil(Math.max(...times) / hour_ms) * hour_ms + 3 * hour_ms;
    const wide = { from: from - reach_ms, to: to + reach_ms, pixelsPerHour: 1 };
    for (const one of occurrences(spans, wide)) {
        for (const end of [one.from, one.to]) {
            if (end < from && end >= wide.from) from = Math.floor(end / hour_ms) * hour_ms;
            if (end > to && end <= wide.to) to = Math.ceil(end / hour_ms) * hour_ms + hour_ms;
        }
    }
    const hours = (to - from) / hour_ms;
    return {
        from,
        to,
        pixelsPerHour: Math.max(hours <= 14 ? 60 : hours <= 26 ? 48 : 36, crowd(plan)),
    };
}

// So many pixels an hour that the words of all stages find room beside their bars, up to a limit.
function crowd(plan: Plan | null): number {
    const stages = plan?.stages.filter((stage) => stage.attention !== 'none') ?? [];
    const first = stages[0];
    const last = stages.at(-1);
    if (!first || !last || first === last) return 0;
    const hours = (fromLocal(last.start) - fromLocal(first.start)) / hour_ms;
    return Math.min(170, (stages.length * label_pixels) / Math.max(1, hours));
}

export function heightOf(range: Range): number {
    return ((range.to - range.from) / hour_ms) * range.pixelsPerHour;
}

export function yOf(range: Range, value: number): number {
    return ((value - range.from) / hour_ms) * range.pixelsPerHour;
}

/// The time at a height, in whole steps of five minutes, inside the range.
export function atY(range: Range, y: number): number {
    const raw = range.from + (y / range.pixelsPerHour) * hour_ms;
    const stepped = Math.round(raw / (5 * minute_ms)) * 5 * minute_ms;
    return Math.min(range.to, Math.max(range.from, stepped));
}

export function hoursOf(range: Range): { at: number; text: string; day: boolean }[] {
    const hours = [];
    for (let at = range.from; at <= range.to; at += hour_ms) {
        const text = toLocal(at).slice(11, 16);
        hours.push({ at, text, day: text === '00:00' });
    }
    return hours;
}

/// One time that a span of the day comes to, inside the range.
export interface Occurrence {
    /// Into the spans.
    index: number;
    from: number;
    to: number;
}

export function occurrences(spans: DaySpan[], range: Range): Occurrence[] {
    const found: Occurrence[] = [];
    const add = (index: number, from: number, to: number): void => {
        if (to > range.from && from < range.to) found.push({ index, from, to });
    };
    const first = toLocal(range.from - 24 * hour_ms).slice(0, 10);
    spans.forEach((span, index) => {
        if (span.from.length > 5) {
            add(index, fromLocal(span.from), fromLocal(span.to));
            return;
        }
        for (let day = 0; ; day += 1) {
            const date = dateAfter(first, day);
            const from = fromLocal(`${date}T${span.from}`);
            if (from > range.to) break;
            const over = span.to <= span.from;
            add(index, from, fromLocal(`${over ? dateAfter(date, 1) : date}T${span.to}`));
        }
    });
    return found;
}

/// A span with one of its ends moved; a daily one keeps only the clock time.
export function withEnd<Span extends DaySpan>(span: Span, end: 'from' | 'to', at: number): Span {
    const time = toLocal(at);
    return { ...span, [end]: span.from.length > 5 ? time : time.slice(11, 16) };
}

export interface Placed {
    /// Into plan.stages.
    index: number;
    /// Bars of several breads stand side by side.
    lane: number;
    /// Where the bar stands.
    top: number;
    height: number;
    /// Where its words stand: beside the bar, or below the words before them.
    labelTop: number;
}

export function placed(plan: Plan, range: Range): Placed[] {
    const breads = [...new Set(plan.stages.map((stage) => stage.bread))];
    let free = Number.NEGATIVE_INFINITY;
    return plan.stages.map((stage, index) => {
        const top = yOf(range, fromLocal(local(stage.start)));
        const bottom = yOf(range, fromLocal(local(stage.end.likely)));
        const labelTop = Math.max(top + 1, free);
        free = labelTop + label_pixels;
        return {
            index,
            lane: breads.indexOf(stage.bread),
            top,
            height: Math.max(2, bottom - top),
            labelTop,
        };
    });
}
