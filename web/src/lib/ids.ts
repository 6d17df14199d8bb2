// SPDX-License-Identifier: Apache-2.0

/// A new id, [A-Za-z0-9_-], made here so that a retry carries the same one. randomUUID is missing
/// where the page came over plain http, as to a phone in the same house.
export function newId(): string {
    const bytes = crypto.getRandomValues(new Uint8Array(15));
    let id = '';
    for (const byte of bytes) id += byte.toString(36).padStart(2, '0');
    return id;
}
