// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import { atY, heightOf, occurrences, rangeOf, withEnd, yOf } from '../src/lib/day-clock';
import { fromLocal, toLocal } from '../src/lib/times';

describe('the clock of the day', () => {
    const range = rangeOf(null, '2026-11-28T18:30');

    it('gives back the time it drew, in fives', () => {
        for (const time of ['2026-11-28T12:00', '2026-11-28T18:30', '2026-11-28T20:55']) {
            expect(toLocal(atY(range, yOf(range, fromLocal(time))))).toBe(time);
        }
        expect(toLocal(atY(range, yOf(range, fromLocal('2026-11-28T18:31'))))).toBe(
            '2026-11-28T18:30',
        );
    });

    it('does not leave its own range', () => {
        expect(atY(range, -500)).toBe(range.from);
        expect(atY(range, heightOf(range) + 500)).toBe(range.to);
    });

    it('shows a night on each of its days, and what is once only once', () => {
        const long = {
            from: fromLocal('2026-11-27T12:00'),
            to: fromLocal('2026-11-29T12:00'),
            pixelsPerHour: 32,
        };
        const found = occurrences(
            [
                { from: '22:30', to: '06:30' },
                { from: '2026-11-28T09:00', to: '2026-11-28T11:00' },
            ],
            long,
        );
        expect(found.map((one) => `${toLocal(one.from)} ${toLocal(one.to)}`)).toEqual([
            '2026-11-27T22:30 2026-11-28T06:30',
            '2026-11-28T22:30 2026-11-29T06:30',
            '2026-11-28T09:00 2026-11-28T11:00',
        ]);
    });

    it('moves an end of a daily window as a clock time alone', () => {
        const at = fromLocal('2026-11-28T23:15');
        expect(withEnd({ from: '22:30', to: '06:30' }, 'from', at).from).toBe('23:15');
        const once = { from: '2026-11-28T09:00', to: '2026-11-28T11:00' } as const;
        expect(withEnd({ ...once }, 'to', at).to).toBe('2026-11-28T23:15');
    });
});
