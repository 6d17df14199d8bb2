// SPDX-License-Identifier: Apache-2.0
//
// A text that was read from a picture, with the words in it that may be others. It can be put right
// word by word or as a whole; a word keeps its place whatever is changed around it.
import type { Clipping, TakenIn } from './api';
import { unitsOfBytes } from './spans';

/// Places are in the string's own units.
export interface DoubtfulWord {
    /// Stays the same while the text changes.
    id: number;
    from: number;
    to: number;
    maybe: string[];
    clipping: Clipping | null;
}

export interface Doubtful {
    text: string;
    words: DoubtfulWord[];
}

const figure = /[0-9\u00bc-\u00be\u2150-\u215e]/u;

/// Of the words in doubt those with a figure: what hangs on the others is for the eye to see.
export function doubtfulOf(taken: TakenIn): Doubtful {
    const unit = unitsOfBytes(taken.text);
    const words = taken.unsure.map((word, id) => ({
        id,
        from: unit(word.span[0]),
        to: unit(word.span[1]),
        maybe: word.maybe,
        clipping: word.clipping,
    }));
    const has = (word: DoubtfulWord): boolean =>
        figure.test(taken.text.slice(word.from, word.to)) ||
        word.maybe.some((one) => figure.test(one));
    return { text: taken.text, words: words.filter(has) };
}

export function wordOf(doubtful: Doubtful, word: DoubtfulWord): string {
    return doubtful.text.slice(word.from, word.to);
}

/// The text with one word put right.
export function withWord(doubtful: Doubtful, id: number, words: string): Doubtful {
    const at = doubtful.words.find((word) => word.id === id);
    if (!at) return doubtful;
    const longer = words.length - (at.to - at.from);
    return {
        text: doubtful.text.slice(0, at.from) + words + doubtful.text.slice(at.to),
        words: doubtful.words.map((word) =>
            word.id === id
                ? { ...word, to: word.to + longer }
                : word.from >= at.to
                  ? { ...word, from: word.from + longer, to: word.to + longer }
                  : word,
        ),
    };
}

/// The text as it was typed over: words inside what was changed are no longer in doubt.
export function withText(doubtful: Doubtful, text: string): Doubtful {
    const before = doubtful.text;
    const most = Math.min(before.length, text.length);
    let head = 0;
    while (head < most && before[head] === text[head]) head += 1;
    let tail = 0;
    while (
        tail < most - head &&
        before[before.length - 1 - tail] === text[text.length - 1 - tail]
    ) {
        tail += 1;
    }
    const longer = text.length - before.length;
    const words: DoubtfulWord[] = [];
    for (const word of doubtful.words) {
        if (word.to <= head) words.push(word);
        else if (word.from >= before.length - tail) {
            words.push({ ...word, from: word.from + longer, to: word.to + longer });
        }
    }
    return { text, words };
}
