// SPDX-License-Identifier: Apache-2.0
//
// The reader counts bytes of UTF-8, a browser counts UTF-16 units. Here one becomes the other.
import type { Reading, Span } from './api';

/// For each byte offset that begins a character, its place in the string (and the end for the last).
export function unitsOfBytes(text: string): (byte: number) => number {
    const starts: number[] = [];
    let bytes = 0;
    let unit = 0;
    for (const character of text) {
        const code = character.codePointAt(0) ?? 0;
        const length = code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
        for (let index = 0; index < length; index += 1) starts[bytes + index] = unit;
        bytes += length;
        unit += character.length;
    }
    starts[bytes] = unit;
    return (byte) => starts[Math.max(0, Math.min(byte, bytes))] ?? text.length;
}

export type PieceKind = 'step' | 'ingredient' | 'unread' | 'between';

/// A stretch of the recipe's text. `index` is into the steps, ingredients or unread parts.
export interface Piece {
    kind: PieceKind;
    index: number;
    text: string;
}

/// The whole text in pieces, in order, nothing left out.
///
/// Promises: the texts joined are the recipe. Where an ingredient lies inside a step it is the step's
///           piece: the ingredient is shown in the margin all the same.
export function pieces(text: string, reading: Reading): Piece[] {
    const unit = unitsOfBytes(text);
    const marked: { from: number; to: number; kind: PieceKind; index: number }[] = [];
    const add = (kind: PieceKind, index: number, span: Span | null): void => {
        if (span) marked.push({ from: unit(span[0]), to: unit(span[1]), kind, index });
    };
    reading.recipe.steps.forEach((step, index) => add('step', index, step.span));
    reading.recipe.ingredients.forEach((one, index) => add('ingredient', index, one.span));
    reading.unread.forEach((one, index) => add('unread', index, one.span));
    marked.sort((one, other) => one.from - other.from || other.to - one.to);

    const result: Piece[] = [];
    let at = 0;
    for (const mark of marked) {
        const from = Math.max(mark.from, at);
        if (mark.to <= from) continue;
        if (from > at) result.push({ kind: 'between', index: -1, text: text.slice(at, from) });
        result.push({ kind: mark.kind, index: mark.index, text: text.slice(from, mark.to) });
        at = mark.to;
    }
    if (at < text.length) result.push({ kind: 'between', index: -1, text: text.slice(at) });
    return result;
}
