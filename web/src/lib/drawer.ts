// SPDX-License-Identifier: Apache-2.0
//
// What must outlive the page when there is no network: ticks and photos on their way, and the last
// state of each bake. In IndexedDB; where a browser forbids that (a private window), in memory,
// which still outlives a lost network though not a closed page.
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';

import type { BakeEvent, BakeState } from './api';

/// One thing that waits to be sent. `order` is given here and says what was first.
export interface Waiting {
    order?: number;
    bake: string;
    event: BakeEvent;
    /// Bytes that are sent first; the event then names them.
    photo?: Blob;
}

export interface LastSeen {
    bake: string;
    state: BakeState;
    events: BakeEvent[];
}

interface Drawers extends DBSchema {
    waiting: { key: number; value: Waiting; indexes: { bake: string } };
    seen: { key: string; value: LastSeen };
}

export interface Drawer {
    put(waiting: Waiting): Promise<number>;
    waitingFor(bake: string): Promise<Waiting[]>;
    take(order: number): Promise<void>;
    remember(seen: LastSeen): Promise<void>;
    recall(bake: string): Promise<LastSeen | null>;
}

function inBrowser(open: IDBPDatabase<Drawers>): Drawer {
    return {
        put: (waiting) => open.add('waiting', waiting),
        waitingFor: (bake) => open.getAllFromIndex('waiting', 'bake', bake),
        take: (order) => open.delete('waiting', order),
        remember: async (seen) => {
            await open.put('seen', seen);
        },
        recall: async (bake) => (await open.get('seen', bake)) ?? null,
    };
}

export function inMemory(): Drawer {
    const waiting = new Map<number, Waiting>();
    const seen = new Map<string, LastSeen>();
    let last = 0;
    return {
        put: async (one) => {
            last += 1;
            waiting.set(last, { ...one, order: last });
            return last;
        },
        waitingFor: async (bake) => [...waiting.values()].filter((one) => one.bake === bake),
        take: async (order) => {
            waiting.delete(order);
        },
        remember: async (one) => {
            seen.set(one.bake, one);
        },
        recall: async (bake) => seen.get(bake) ?? null,
    };
}

let drawer: Promise<Drawer> | null = null;

async function open(): Promise<Drawer> {
    try {
        return inBrowser(
            await openDB<Drawers>('loafwright', 1, {
                upgrade(made) {
                    made.createObjectStore('waiting', {
                        keyPath: 'order',
                        autoIncrement: true,
                    }).createIndex('bake', 'bake');
                    made.createObjectStore('seen', { keyPath: 'bake' });
                },
            }),
        );
    } catch {
        return inMemory();
    }
}

export function openDrawer(): Promise<Drawer> {
    drawer ??= open();
    return drawer;
}
