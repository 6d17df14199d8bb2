// SPDX-License-Identifier: Apache-2.0
import { expect, it } from 'vitest';

import { screenOf } from '../src/lib/route.svelte';

it.each([
    ['/', { name: 'start' }],
    ['/recipe', { name: 'recipe', bread: 0 }],
    ['/recipe/2', { name: 'recipe', bread: 2 }],
    ['/day', { name: 'day' }],
    ['/page', { name: 'page' }],
    ['/bake/a-1', { name: 'bake', id: 'a-1' }],
    ['/bake/a-1/log', { name: 'log', id: 'a-1' }],
    ['/bake', { name: 'nowhere' }],
    ['/bake/a/log/b', { name: 'nowhere' }],
    ['/recipe/x', { name: 'nowhere' }],
    ['/bake/%E0%A4%A', { name: 'nowhere' }],
])('the path %s is a screen', (path, screen) => {
    expect(screenOf(path)).toEqual(screen);
});
