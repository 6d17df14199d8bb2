// SPDX-License-Identifier: Apache-2.0
//
// The screens behind the first one. They come after it, so that the first stands sooner, and all at
// once as soon as there is time, so that none is missing when the network is.
import type { Component } from 'svelte';

const loaders = {
    recipe: () => import('../screens/Recipe.svelte'),
    gather: () => import('../screens/Gather.svelte'),
    progress: () => import('../screens/Progress.svelte'),
    shelf: () => import('../screens/Shelf.svelte'),
    day: () => import('../screens/Day.svelte'),
    page: () => import('../screens/Page.svelte'),
    bake: () => import('../screens/Bake.svelte'),
    log: () => import('../screens/Log.svelte'),
};

export type Later = keyof typeof loaders;

const loaded = new Map<Later, Promise<Component<Record<string, unknown>>>>();

export function screenPart(name: Later): Promise<Component<Record<string, unknown>>> {
    const before = loaded.get(name);
    if (before) return before;
    const loading = loaders[name]().then(
        (part) => part.default as unknown as Component<Record<string, unknown>>,
    );
    loaded.set(name, loading);
    // A lost network must not be remembered as the answer.
    loading.catch(() => loaded.delete(name));
    return loading;
}

export function fetchTheRest(): void {
    const fetchAll = (): void => {
        for (const name of Object.keys(loaders) as Later[]) {
            screenPart(name).catch(() => undefined);
        }
    };
    if (typeof requestIdleCallback === 'function') requestIdleCallback(fetchAll, { timeout: 4000 });
    else setTimeout(fetchAll, 1500);
}
