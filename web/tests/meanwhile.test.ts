// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import type { BakeEvent } from '../src/lib/api';
import { happened, lookAgain } from '../src/lib/happenings';
import { meanwhile } from '../src/lib/meanwhile';
import { plan, stateAt } from './double';

const at = (time: string): number => Date.parse(`2026-11-28T${time}:00Z`);
const state = stateAt(0, plan.start);
const tick = (stage: number, time: string): BakeEvent =>
    happened({ bread: 0, stage }, { kind: 'done' }, `2026-11-28T${time}:00+00:00`);

describe('between two answers of the server', () => {
    it('nothing told and no time gone by is the server’s own moment', () => {
        expect(meanwhile(state, [], [], at('13:00'))).toEqual(state.moment);
    });

    it('a tick ends its line and begins the next one', () => {
        const moment = meanwhile(state, [tick(1, '13:25')], [], at('13:25'));
        expect(moment.lines[0]?.done).toBe('2026-11-28T13:25:00+00:00');
        expect(moment.doing.map((one) => [one.stage, one.state])).toEqual([[2, 'running']]);
        expect(moment.next.map((one) => one.stage)).toEqual([3]);
        expect(moment.say).toBe('First rise, covered. Free until 14:00.');
    });

    it('the clock alone brings the look, the act that is due, and at last that it is late', () => {
        const told = [tick(1, '13:20')];
        const doing = (time: string) => meanwhile(state, told, [], at(time)).doing[0];
        expect(doing('13:59')?.acts[0]?.due).toBe(false);
        expect(doing('14:00')?.acts[0]?.due).toBe(true);
        expect(doing('14:09')?.state).toBe('running');
        expect(doing('14:10')?.state).toBe('look');
        expect(doing('14:10')?.free_until).toBeNull();
        expect(doing('14:21')?.state).toBe('late');
    });

    it('a tick that was never sent and is taken back leaves no trace', () => {
        const done = tick(1, '13:10');
        const back = happened(done, { kind: 'taken_back', undoes: done.id }, done.at);
        const moment = meanwhile(state, [done, back], [done, back], at('13:10'));
        expect(moment.doing.map((one) => one.stage)).toEqual([1]);
        expect(moment.lines.every((line) => line.done === null)).toBe(true);
    });

    it('a tick the server has counted is taken back to its line', () => {
        const done = tick(1, '13:10');
        const after = { ...state, moment: meanwhile(state, [done], [], at('13:10')), last: 1 };
        const back = happened(done, { kind: 'taken_back', undoes: done.id }, done.at);
        const moment = meanwhile(after, [back], [done, back], at('13:11'));
        expect(moment.doing.map((one) => one.stage)).toEqual([1]);
        expect(moment.lines.map((line) => line.done)).toEqual([null, null, null]);
        expect(moment.lines[1]?.begun).toBeNull();
    });

    it('somebody who has already begun stands at that line, and those before it are over', () => {
        const begun = happened(
            { bread: 0, stage: 3 },
            { kind: 'begun' },
            '2026-11-28T14:00:00+00:00',
        );
        const moment = meanwhile(state, [begun], [], at('14:05'));
        expect(moment.doing.map((one) => one.stage)).toEqual([3]);
        expect(moment.lines.slice(0, 2).every((line) => line.done !== null)).toBe(true);
        expect(moment.finished).toBe(false);
    });

    it('the last tick finishes the bake', () => {
        const ticks = [tick(1, '13:20'), tick(2, '14:20'), tick(3, '14:50')];
        const moment = meanwhile(state, ticks, [], at('14:50'));
        expect(moment.finished).toBe(true);
        expect(moment.doing).toEqual([]);
    });

    it('what is not ready is looked at again later, however late it was', () => {
        const rise = [tick(1, '13:20')];
        const seen = meanwhile(state, rise, [], at('14:32')).doing[0];
        if (!seen) throw new Error('nothing is being done');
        expect(seen.state).toBe('late');
        const again = lookAgain(seen, at('14:32'));
        expect(again).toBe('2026-11-28T14:45:00Z');
        const slow = happened(seen, { kind: 'not_ready', until: again }, seen.begun ?? '');
        const doing = meanwhile(state, [...rise, slow], [], at('14:32')).doing[0];
        expect(doing?.state).toBe('running');
        expect(doing?.free_until).toBe(again);
    });

    it('and not before the plan has it ready', () => {
        const seen = meanwhile(state, [tick(1, '13:20')], [], at('14:01')).doing[0];
        if (!seen) throw new Error('nothing is being done');
        expect(lookAgain(seen, at('14:01'))).toBe('2026-11-28T14:20:00Z');
    });

    it('does not change the state it was given', () => {
        const before = structuredClone(state);
        meanwhile(state, [tick(1, '13:25')], [], at('15:00'));
        expect(state).toEqual(before);
    });
});
