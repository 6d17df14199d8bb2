// SPDX-License-Identifier: Apache-2.0
//
// Sentences that a page is opened with.
import type { Sheet } from './api';

/// "Begin at 13:00. 40 minutes of your hands; you are free 13:30 to 14:35."
export function opening(sheet: Sheet): string {
    const begin = `${sheet.begin.words} ${sheet.begin.time}.`;
    return sheet.free === null ? begin : `${begin} ${sheet.free}`;
}
