// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import type { Step } from '../src/lib/api';
import { amountFields, readFirst, stepFields, unreadFields } from '../src/lib/corrections';

const bake: Step = {
    kind: 'bake',
    place: 'oven',
    text: 'Bake at 220 °C for 35 minutes',
    part: null,
    minutes: { low: 35, likely: 35, high: 35, basis: 'stated' },
    temperature_c: { low: 220, high: 220 },
    optional: false,
    during: null,
    clock: null,
    cue: null,
    reminders: [],
    span: [187, 216],
    at: '187',
    as_read: null,
};
const prove: Step = { ...bake, kind: 'prove', place: 'counter', temperature_c: null, at: '90-2' };
const keys = (fields: { key: string }[]): string[] => fields.map((field) => field.key);

describe('what can be put right', () => {
    it('is named by the place where it was read', () => {
        expect(keys(stepFields(bake))).toEqual(['kind-at-187', 'minutes-at-187', 'heat-at-187']);
        expect(keys(stepFields(prove))).toEqual([
            'kind-at-90-2',
            'minutes-at-90-2',
            'heat-at-90-2',
            'place-at-90-2',
        ]);
        expect(keys(unreadFields({ text: '', span: [3, 9], why: '', at: '3' }))).toEqual([
            'kind-at-3',
            'minutes-at-3',
        ]);
    });

    it('stands in the form as it was read', () => {
        expect(stepFields(bake).map((field) => field.value)).toEqual(['bake', '35 min', '220 °C']);
    });

    it('lets every kind be chosen, and none', () => {
        const choices = stepFields(bake)[0]?.choices?.map((choice) => choice.value) ?? [];
        expect(choices).toContain('none');
        expect(choices).toContain('prove');
    });

    it('is no amount that the text does not have', () => {
        const salt = {
            text: '10 g',
            item: 'salt',
            grams: { low: 10, likely: 10, high: 10 },
            optional: false,
            part: null,
            span: null,
            at: '',
            as_read: null,
        };
        expect(amountFields(salt)).toEqual([]);
        expect(amountFields({ ...salt, at: '40' })[0]?.value).toBe('10 g');
    });
});

describe('what was read first', () => {
    it('is told only where something was put right', () => {
        expect(readFirst(bake)).toBe('');
        const put = {
            ...bake,
            as_read: {
                kind: 'prove',
                place: 'fridge',
                minutes: { low: 45, likely: 50, high: 60, basis: 'stated' as const },
                temperature_c: null,
            },
        };
        expect(readFirst(put)).toBe('final prove in the fridge, 45 min to 1 h');
    });
});
