// SPDX-License-Identifier: Apache-2.0
//
// The first screen as it stands before anything is known: made once, when the pages are built
// (scripts/first-view.ts), so that its field takes a recipe before the scripts have come. main.ts
// goes on from it.
import { render } from 'svelte/server';

import App from './App.svelte';

export function firstView(): string {
    return render(App).body;
}
