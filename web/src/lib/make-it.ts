// SPDX-License-Identifier: Apache-2.0
//
// The size that somebody says, as it is sent. What comes of it is the engine's to say.
import type { Size } from './api';

export type How = 'written' | 'pieces' | 'tin' | 'times';

export interface SaidSize {
    how: How;
    said: string;
}

const number = /\d+(?:[.,]\d+)?/g;

/// Promises: null while the words are not yet a size: no number, or a tin without its three sides.
export function sizeFrom({ how, said }: SaidSize): Size | null {
    const told = (said.match(number) ?? []).map((one) => Number(one.replace(',', '.')));
    const [first, second, third] = told;
    if (first === undefined || how === 'written') return null;
    if (how === 'pieces') return { pieces: first };
    if (how === 'times') return { factor: first };
    if (second === undefined || third === undefined || told.length > 3) return null;
    return { tin_mm: { length: first, width: second, height: third } };
}

/// The same in words again, for a page that is opened anew.
export function saidOf(size: Size | undefined): SaidSize {
    if (size?.pieces !== undefined) return { how: 'pieces', said: String(size.pieces) };
    if (size?.factor !== undefined) return { how: 'times', said: String(size.factor) };
    const tin = size?.tin_mm;
    if (tin) return { how: 'tin', said: `${tin.length} × ${tin.width} × ${tin.height}` };
    return { how: 'written', said: '' };
}
