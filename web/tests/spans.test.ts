// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import type { Reading, Span } from '../src/lib/api';
import { pieces, unitsOfBytes } from '../src/lib/spans';

function readingOf(steps: Span[], unread: Span[], ingredients: Span[] = []): Reading {
    return {
        version: 1,
        recipe: {
            title: '',
            pieces: null,
            ingredients: ingredients.map((span) => ({
                text: '',
                item: '',
                grams: null,
                optional: false,
                part: null,
                span,
                at: String(span[0]),
                as_read: null,
            })),
            steps: steps.map((span) => ({
                kind: 'bake',
                place: 'oven',
                text: '',
                part: null,
                minutes: null,
                temperature_c: null,
                optional: false,
                during: null,
                clock: null,
                cue: null,
                reminders: [],
                span,
                at: String(span[0]),
                as_read: null,
            })),
            changes: [],
        },
        unread: unread.map((span) => ({ text: '', span, why: '', at: String(span[0]) })),
        questions: [],
        remarks: [],
    };
}

// The browser's own encoder is the judge of how many bytes a piece of text has.
const bytes = (text: string): number => new TextEncoder().encode(text).length;

describe('spans', () => {
    it('turn byte offsets into places in the string, whatever the letters', () => {
        const text = 'Bake at 230°C – ½ h, naïve 🍞 loaf';
        const unit = unitsOfBytes(text);
        let byte = 0;
        let at = 0;
        for (const character of text) {
            expect(unit(byte)).toBe(at);
            byte += bytes(character);
            at += character.length;
        }
        expect(unit(byte)).toBe(text.length);
    });

    it('never drop a letter, and mark the pieces the reader named', () => {
        const text = 'Über Nacht: 1½ h at 5 °C. Bake it. Nice.';
        const bake = text.indexOf('Bake');
        const nice = text.indexOf('Nice');
        const span = (from: number, to: number): Span => [
            bytes(text.slice(0, from)),
            bytes(text.slice(0, to)),
        ];
        const found = pieces(
            text,
            readingOf([span(bake, bake + 8)], [span(nice, text.length)], [span(bake, bake + 4)]),
        );
        expect(found.map((piece) => piece.text).join('')).toBe(text);
        expect(
            found
                .filter((piece) => piece.kind !== 'between')
                .map((piece) => [piece.kind, piece.text]),
        ).toEqual([
            ['step', 'Bake it.'],
            ['unread', 'Nice.'],
        ]);
    });

    it('keep the whole text when spans touch, overlap or reach too far', () => {
        const text = 'Mix. Knead. Rest.';
        const found = pieces(
            text,
            readingOf(
                [
                    [0, 4],
                    [2, 11],
                    [11, 400],
                ],
                [[4, 5]],
            ),
        );
        expect(found.map((piece) => piece.text).join('')).toBe(text);
    });
});
