// SPDX-License-Identifier: Apache-2.0
import { expect, it } from 'vitest';

import { AlarmBook } from '../src/lib/alarms';
import type { Alarm } from '../src/lib/api';

const at = (time: string): number => Date.parse(`2026-11-28T${time}:00Z`);
const alarm = (time: string, text: string, stage = 1): Alarm => ({
    at: `2026-11-28T${time}:00Z`,
    text,
    bread: 0,
    stage,
    kind: 'act',
});
const nothingOver = (): boolean => false;

it('rings each alarm once', () => {
    const book = new AlarmBook(at('12:00'));
    const list = [alarm('13:00', 'oven on')];
    expect(book.due(list, nothingOver, at('12:59'))).toEqual([]);
    expect(book.due(list, nothingOver, at('13:00'))).toEqual(list);
    expect(book.due(list, nothingOver, at('13:01'))).toEqual([]);
});

it('rings one that the next answer of the server left out because its time had come', () => {
    const book = new AlarmBook(at('12:00'));
    book.due([alarm('13:00', 'oven on')], nothingOver, at('12:59'));
    expect(book.due([], nothingOver, at('13:00'))).toHaveLength(1);
});

it('forgets one that was moved, and rings it at its new time', () => {
    const book = new AlarmBook(at('12:00'));
    book.due([alarm('13:00', 'oven on')], nothingOver, at('12:30'));
    const later = [alarm('13:20', 'oven on')];
    expect(book.due(later, nothingOver, at('13:00'))).toEqual([]);
    expect(book.due(later, nothingOver, at('13:20'))).toEqual(later);
});

it('is silent about lines that are over and about what was due before the page was opened', () => {
    const book = new AlarmBook(at('12:00'));
    expect(book.due([alarm('11:00', 'fold')], nothingOver, at('12:00'))).toEqual([]);
    expect(book.due([alarm('12:10', 'look')], () => true, at('12:10'))).toEqual([]);
});
