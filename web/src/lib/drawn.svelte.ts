// SPDX-License-Identifier: Apache-2.0
//
// Whether the first view has been drawn. What browsers take long to make, and nobody needs in the
// first instant, waits for it.

let first = $state(false);

export const drawn = {
    get first(): boolean {
        return first;
    },
};

export function watchFirstView(): void {
    requestAnimationFrame(() => setTimeout(() => (first = true), 0));
}
