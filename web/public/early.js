// SPDX-License-Identifier: Apache-2.0
//
// Before the first view: light or dark as it was chosen here (lib/look.svelte.ts), and whether a recipe
// was brought already (lib/draft.svelte.ts), so that the view of an empty table is not shown first.
try {
    const root = document.documentElement;
    const kept = (key) => JSON.parse(localStorage.getItem(`loafwright.${key}`) ?? 'null');
    const look = kept('look');
    if (look === 'light' || look === 'dark') root.dataset.look = look;
    if (kept('draft')?.breads?.length > 0) root.dataset.begun = '';
} catch {
    // A browser that forbids to remember: the device's own look, and the empty table.
}
