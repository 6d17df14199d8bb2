// SPDX-License-Identifier: Apache-2.0
import { describe, expect, it } from 'vitest';

import type { TakenIn } from '../src/lib/api';
import { doubtfulOf, withText, withWord, wordOf, type Doubtful } from '../src/lib/doubtful';

const text = 'Crème loaf\n5OO g flour\n1% tsp salt\nBake for 35 minutes';

// The browser's own encoder is the judge of where a word stands in bytes.
function unsure(word: string, maybe: string[] = []): TakenIn['unsure'][number] {
    const bytes = (words: string): number => new TextEncoder().encode(words).length;
    const begin = bytes(text.slice(0, text.indexOf(word)));
    return { span: [begin, begin + bytes(word)], confidence: 0.4, maybe, clipping: null };
}

function taken(...words: TakenIn['unsure']): TakenIn {
    return { kind: 'picture', text, handwriting: false, unsure: words, pages: [], remarks: [] };
}

const shown = (doubtful: Doubtful): string[] =>
    doubtful.words.map((word) => wordOf(doubtful, word));

describe('words in doubt', () => {
    it('are those that are or may be a figure', () => {
        const doubtful = doubtfulOf(
            taken(unsure('loaf'), unsure('5OO', ['500']), unsure('1%', ['1½']), unsure('35')),
        );
        expect(shown(doubtful)).toEqual(['5OO', '1%', '35']);
    });

    it('keep their places when one is put right', () => {
        let doubtful = doubtfulOf(taken(unsure('5OO'), unsure('1%'), unsure('35')));
        doubtful = withWord(doubtful, 0, '1500');
        doubtful = withWord(doubtful, 2, '5');
        expect(shown(doubtful)).toEqual(['1500', '1%', '5']);
        expect(doubtful.text).toBe('Crème loaf\n1500 g flour\n1% tsp salt\nBake for 5 minutes');
    });

    it('are in doubt no longer where the text is typed over', () => {
        const doubtful = withText(
            doubtfulOf(taken(unsure('5OO'), unsure('1%'), unsure('35'))),
            text.replace('1% tsp', 'a pinch of'),
        );
        expect(shown(doubtful)).toEqual(['5OO', '35']);
    });

    it('survive any typing elsewhere', () => {
        const doubtful = doubtfulOf(taken(unsure('5OO'), unsure('35')));
        for (const typed of [`${text}.`, `x${text}`, text.replace('g flour', 'g strong flour')]) {
            expect(shown(withText(doubtful, typed))).toEqual(['5OO', '35']);
        }
    });
});
