// SPDX-License-Identifier: Apache-2.0
//
// Small things this browser remembers for itself. A browser that forbids it forgets them, no more.

export function recallHere<Value>(key: string, otherwise: Value): Value {
    try {
        const text = localStorage.getItem(`loafwright.${key}`);
        return text === null ? otherwise : (JSON.parse(text) as Value);
    } catch {
        return otherwise;
    }
}

export function rememberHere(key: string, value: unknown): void {
    try {
        localStorage.setItem(`loafwright.${key}`, JSON.stringify(value));
    } catch {
        // Full or forbidden: the value holds until the page is closed.
    }
}
