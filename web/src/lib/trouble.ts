// SPDX-License-Identifier: Apache-2.0
//
// What stands in the way, in words to show.
import { Refused } from './http';

/// What the server said, or that it cannot be reached; `without` says what that means here.
export function troubleWords(cause: unknown, without: string): string {
    if (cause instanceof Refused) return cause.message;
    return `No connection to the kitchen’s computer. ${without}`;
}
