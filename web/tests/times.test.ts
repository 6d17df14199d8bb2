// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import {
    asIn,
    clock,
    clockWithDay,
    dateAfter,
    dayName,
    left,
    leftSpoken,
    lengthWords,
    moved,
    stamp,
} from '../src/lib/times';

describe('times', () => {
    it('are shown as the server wrote them, whatever zone this device is in', () => {
        expect(clock('2026-11-28T13:05:00+13:00')).toBe('13:05');
        expect(clock('2026-11-28T00:05:00Z', '12')).toBe('12:05 am');
        expect(clock('2026-11-28T12:00:00Z', '12')).toBe('12:00 pm');
        expect(clockWithDay('2026-11-29T07:30:00Z', '2026-11-28T20:00:00Z')).toBe(
            'Sun 29 Nov, 07:30',
        );
    });

    // The browser's own calendar is the judge.
    it('name the day of the week as the calendar does', () => {
        for (const date of ['2024-02-29', '2026-03-29', '2026-12-31', '2027-01-01']) {
            const judge = new Intl.DateTimeFormat('en-GB', { weekday: 'short', timeZone: 'UTC' });
            expect(dayName(date).slice(0, 3)).toBe(judge.format(new Date(`${date}T12:00:00Z`)));
        }
        expect(dateAfter('2024-02-28', 1)).toBe('2024-02-29');
        expect(dateAfter('2026-12-31', 1)).toBe('2027-01-01');
    });

    it('count down in minutes, and in seconds only at the end', () => {
        const at = '2026-11-28T14:00:00Z';
        const now = (clockTime: string): number => Date.parse(`2026-11-28T${clockTime}Z`);
        expect(left(at, now('12:25:00'))).toBe('1 h 35');
        expect(left(at, now('13:54:59'))).toBe('6 min');
        expect(left(at, now('13:55:00'))).toBe('5 min 00 s');
        expect(left(at, now('13:59:50'))).toBe('10 s');
        expect(left(at, now('14:00:00'))).toBe('now');
        expect(leftSpoken(at, now('12:59:00'))).toBe('in 1 hour and 1 minute');
    });

    it('keep to fives when they are moved', () => {
        expect(moved('2026-11-28T23:58', 5)).toBe('2026-11-29T00:05');
        expect(lengthWords(60)).toBe('1 h');
        expect(lengthWords(65)).toBe('1 h 05');
    });

    it('stay the same moment when written with another offset', () => {
        for (const sample of [
            '2026-07-01T10:00:00+02:00',
            '2026-07-01T10:00:00-09:30',
            '2026-07-01T10:00:00Z',
        ]) {
            const time = stamp(Date.parse('2026-11-28T23:30:15Z'));
            const written = asIn(time, sample);
            expect(Date.parse(written)).toBe(Date.parse(time));
            expect(written.slice(19)).toBe(sample.slice(19));
        }
    });
});
