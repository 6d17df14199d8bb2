// SPDX-License-Identifier: Apache-2.0
//
// A bread that was baked becomes the next one to plan, with the one change that the bake taught.
import type { TryNext } from './api';
import { draft, keepBread, take, type DraftBread } from './draft.svelte';
import * as engine from './engine';
import { newId } from './ids';
import * as keep from './keep';
import { dateAfter, localNow } from './times';

export const nextTimeKey = 'next-time';

/// Promises: the draft holds that bread alone, its own recipe where it is still kept.
/// Errors:   those of keep.bake.
export async function bakeAgain(bake: string, bread: number, next: TryNext | null): Promise<void> {
    const [kept, notebook] = await Promise.all([keep.bake(bake), keep.notebook()]);
    const told = kept.request.breads[bread];
    if (!told) return;
    const name = told.name ?? '';
    const same = notebook.recipes.find((one) => one.text === told.text);
    const others = (told.answers ?? []).filter((one) => one.key !== nextTimeKey);
    const change = next && { key: nextTimeKey, value: `${next.stage}: ${next.change}` };
    draft.breads = [];
    // Another day, at the same time of day.
    const tomorrow = dateAfter(localNow(Date.now()), 1);
    draft.wish = { by: draft.wish.by, at: `${tomorrow}T${draft.wish.at.slice(11, 16)}` };
    take({
        id: same?.id ?? newId(),
        name: same?.name ?? name,
        text: told.text,
        answers: change ? [...others, change] : others,
    });
    const taken: DraftBread | undefined = draft.breads[0];
    if (!taken) return;
    Object.assign(taken, engine.wishOf(told));
    if (change) taken.asked[nextTimeKey] = 'What you change this time';
    keepBread(taken);
}
