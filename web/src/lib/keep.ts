// SPDX-License-Identifier: Apache-2.0
//
// The one door to what is kept and shared: recipes, settings, bakes and their events, photos. What a
// bake needs goes through KeptBake (lib/kept-bake.ts), which also works while there is no network, and
// comes with the bake's own screens.
import type {
    Bake,
    BakeEntry,
    BakeRequest,
    DayHabits,
    Kitchen,
    KeptRecipe,
    Notebook,
    Trouble,
} from './api';
import { ask } from './http';
import { recallHere, rememberHere } from './local';

export { Refused, Unreachable } from './http';

const part = encodeURIComponent;

export function notebook(): Promise<Notebook> {
    return ask('GET', 'notebook');
}

/// The id is made here (lib/ids.ts), so that the same recipe kept twice stays one.
export async function keepRecipe(recipe: KeptRecipe): Promise<void> {
    const { id, ...rest } = recipe;
    await ask('PUT', `recipes/${part(id)}`, { json: rest });
}

export async function forgetRecipe(id: string): Promise<void> {
    await ask('DELETE', `recipes/${part(id)}`);
}

export async function keepSettings(kitchen: Kitchen, day: DayHabits): Promise<void> {
    await ask('PUT', 'settings', { json: { kitchen, day } });
}

/// Begins a bake. The same id again changes nothing.
export async function beginBake(id: string, request: BakeRequest): Promise<void> {
    await ask('POST', 'bakes', { json: { id, request } });
}

export async function bakes(): Promise<BakeEntry[]> {
    return (await ask<{ bakes: BakeEntry[] }>('GET', 'bakes')).bakes;
}

/// A bake as it was begun, and everything that was told of it.
export function bake(id: string): Promise<Bake> {
    return ask('GET', `bakes/${part(id)}`);
}

interface HelpWords {
    troubles: Trouble[];
    symptoms: { key: string; tells: string }[];
}

let words: Promise<HelpWords> | null = null;

// Asked once, and remembered on this device, so that it is there without a network, also in a page that
// was loaded again.
function helpWords(): Promise<HelpWords> {
    words ??= ask<HelpWords>('GET', 'help').then(
        (answer) => {
            rememberHere('help-words', answer);
            return answer;
        },
        (cause: unknown) => {
            words = null;
            const last = recallHere<HelpWords | null>('help-words', null);
            if (last) return last;
            throw cause;
        },
    );
    return words;
}

/// What may happen at a bake, and what helps.
export async function help(): Promise<Trouble[]> {
    return (await helpWords()).troubles;
}

/// The signs that a baker may name, in the words that are shown.
export async function symptoms(): Promise<HelpWords['symptoms']> {
    return (await helpWords()).symptoms;
}

export function photoAddress(photo: string): string {
    return `/api/v1/photos/${part(photo)}`;
}

/// A code to scan that opens this address on another screen.
export function codeAddress(address: string): string {
    return `/api/v1/code?address=${part(address)}`;
}

export const exportAddress = '/api/v1/export';

export async function takeIn(everything: Blob): Promise<void> {
    await ask('POST', 'import', { json: JSON.parse(await everything.text()) as unknown });
}
