// SPDX-License-Identifier: Apache-2.0
//
// Which screen is shown, by the path alone, so that a reload or a link comes back to the same place.

export type Screen =
    | { name: 'start' }
    | { name: 'recipe'; bread: number }
    | { name: 'day' }
    | { name: 'shelf' }
    | { name: 'gather' }
    | { name: 'progress' }
    | { name: 'page' }
    | { name: 'bake'; id: string }
    | { name: 'log'; id: string }
    | { name: 'nowhere' };

function decoded(part: string): string | null {
    try {
        return decodeURIComponent(part);
    } catch {
        return null;
    }
}

export function screenOf(path: string): Screen {
    const [first = '', second = '', third = '', ...rest] = path.split('/').slice(1);
    if (rest.length > 0) return { name: 'nowhere' };
    if (first === '' && second === '') return { name: 'start' };
    if (first === 'day' && second === '') return { name: 'day' };
    if (first === 'progress' && second === '') return { name: 'progress' };
    if (first === 'gather' && second === '') return { name: 'gather' };
    if (first === 'shelf' && second === '') return { name: 'shelf' };
    if (first === 'page' && second === '') return { name: 'page' };
    if (first === 'recipe' && third === '' && /^\d*$/.test(second)) {
        return { name: 'recipe', bread: Number(second || '0') };
    }
    if (first === 'bake' && second !== '') {
        const id = decoded(second);
        if (id === null) return { name: 'nowhere' };
        if (third === '') return { name: 'bake', id };
        if (third === 'log') return { name: 'log', id };
    }
    return { name: 'nowhere' };
}

// The first view is also made where there is no browser (src/first-view.ts).
let path = $state(globalThis.location?.pathname ?? '/');

export const route = {
    get path(): string {
        return path;
    },
    get screen(): Screen {
        return screenOf(path);
    },
};

export function go(to: string): void {
    if (to !== location.pathname) history.pushState(null, '', to);
    path = location.pathname;
    scrollTo(0, 0);
}

/// Links inside the pages change the screen without loading it anew.
export function followLinks(event: MouseEvent): void {
    if (event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = (event.target as Element | null)?.closest?.('a');
    if (!link || link.hash || link.target || link.hasAttribute('download')) return;
    if (link.origin !== location.origin || link.pathname.startsWith('/api/')) return;
    event.preventDefault();
    go(link.pathname);
}

export function listenToHistory(): () => void {
    const moved = (): void => {
        path = location.pathname;
    };
    addEventListener('popstate', moved);
    return () => removeEventListener('popstate', moved);
}
