// SPDX-License-Identifier: Apache-2.0
//
// The time, for screens. Moves on the second, and at once when the page comes back from sleep.

let now = $state(Date.now());
let users = 0;
let timer: ReturnType<typeof setTimeout> | null = null;

function tick(): void {
    // Read into a variable: an effect that starts the clock must not depend on it.
    const at = Date.now();
    now = at;
    timer = setTimeout(tick, 1000 - (at % 1000));
}

function awake(): void {
    if (document.visibilityState === 'visible') now = Date.now();
}

export const time = {
    get now(): number {
        return now;
    },
};

/// Keeps the clock going while somebody looks at it.
export function keepTime(): () => void {
    users += 1;
    if (users === 1) {
        tick();
        document.addEventListener('visibilitychange', awake);
    }
    return () => {
        users -= 1;
        if (users > 0) return;
        if (timer) clearTimeout(timer);
        timer = null;
        document.removeEventListener('visibilitychange', awake);
    };
}
