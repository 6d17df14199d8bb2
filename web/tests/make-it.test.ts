// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import { saidOf, sizeFrom } from '../src/lib/make-it';

describe('the size that somebody says', () => {
    it.each([
        ['pieces', '12', { pieces: 12 }],
        ['times', '1.5', { factor: 1.5 }],
        ['times', '1,5', { factor: 1.5 }],
        ['tin', '230 x 130 x 70', { tin_mm: { length: 230, width: 130, height: 70 } }],
        ['tin', '230×130×70 mm', { tin_mm: { length: 230, width: 130, height: 70 } }],
    ] as const)('%s %s', (how, said, size) => {
        expect(sizeFrom({ how, said })).toEqual(size);
    });

    it.each([
        ['pieces', ''],
        ['pieces', 'many'],
        ['tin', '230 x 130'],
        ['tin', '230 x 130 x 70 x 2'],
        ['written', '12'],
    ] as const)('%s %s is none yet', (how, said) => {
        expect(sizeFrom({ how, said })).toBeNull();
    });

    it('comes back in words', () => {
        for (const size of [
            { pieces: 8 },
            { factor: 0.5 },
            { tin_mm: { length: 280, width: 110, height: 100 } },
        ]) {
            expect(sizeFrom(saidOf(size))).toEqual(size);
        }
        expect(saidOf(undefined)).toEqual({ how: 'written', said: '' });
    });
});
