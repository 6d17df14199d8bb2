// SPDX-License-Identifier: Apache-2.0
//
// Light or dark: as the device says, until somebody chooses.
import { recallHere, rememberHere } from './local';

export type Look = 'device' | 'light' | 'dark';

let chosen = $state<Look>(recallHere<Look>('look', 'device'));

export const look = {
    get chosen(): Look {
        return chosen;
    },
};

function apply(): void {
    if (chosen === 'device') delete document.documentElement.dataset.look;
    else document.documentElement.dataset.look = chosen;
}

export function choose(wanted: Look): void {
    chosen = wanted;
    rememberHere('look', wanted);
    apply();
}

// The first view is also made where there is no browser (src/first-view.ts).
if (typeof document !== 'undefined') apply();
