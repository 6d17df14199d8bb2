// SPDX-License-Identifier: Apache-2.0
//
// One bake as this screen has it. A tick is shown at once, put into the drawer and sent as soon as
// there is a network; the server's stream tells what other screens did. The server counts an
// event id once, so sending twice after a lost answer does no harm.
import type { BakeEvent, BakeState } from './api';
import { openDrawer, type Drawer, type Waiting } from './drawer';
import * as engine from './engine';
import { ask, Refused } from './http';
import { newest, type Newest } from './newest';
import { instant, stamp } from './times';

export interface BakeView {
    state: BakeState | null;
    /// Everything known to have happened, the server's order first, then what still waits.
    events: BakeEvent[];
    /// What `state` does not contain yet.
    untold: BakeEvent[];
    waiting: number;
    online: boolean;
    /// The server does not know this bake.
    missing: boolean;
    /// Something could not be kept; it says what.
    refused: string | null;
}

// Two clocks that are set by the network differ by less.
const clocks_differ_ms = 120_000;
const retry_ms = [1000, 2000, 5000, 10_000];

export class KeptBake {
    private state: BakeState | null = null;
    private told = new Map<string, { sequence: number; event: BakeEvent }>();
    private waiting: Waiting[] = [];
    /// What is being put into the drawer.
    private readonly onTheWay = new Map<string, Promise<void>>();
    private online = true;
    private missing = false;
    private refused: string | null = null;
    private stream: EventSource | null = null;
    private timer: ReturnType<typeof setTimeout> | null = null;
    private tries = 0;
    private sending = false;
    private closed = false;
    private readonly refresher: Newest<number>;
    private readonly path: string;
    private readonly back = (): void => this.reconnect();
    private drawer: Promise<Drawer> = openDrawer();

    constructor(
        readonly id: string,
        private readonly changed: (view: BakeView) => void,
        private readonly now: () => number = Date.now,
    ) {
        this.path = `bakes/${encodeURIComponent(id)}`;
        this.refresher = newest(
            (at: number) => engine.state(id, stamp(at)),
            (state) => this.took(state),
            (cause) => this.failed(cause),
        );
        globalThis.addEventListener?.('online', this.back);
    }

    /// Shows what was last seen here, then asks the server.
    async open(): Promise<void> {
        const drawer = await this.drawer;
        const [seen, waiting] = await Promise.all([
            drawer.recall(this.id).catch(() => null),
            drawer.waitingFor(this.id).catch(() => []),
        ]);
        if (this.closed) return;
        if (seen && !this.state) {
            this.state = seen.state;
            for (const event of seen.events) this.told.set(event.id, { sequence: 0, event });
        }
        this.waiting = waiting;
        this.show();
        this.refresh();
        this.listen();
        void this.send();
    }

    close(): void {
        this.closed = true;
        this.refresher.stop();
        this.stream?.close();
        if (this.timer) clearTimeout(this.timer);
        globalThis.removeEventListener?.('online', this.back);
    }

    /// Asks for the bake as it stands now.
    refresh(): void {
        this.refresher.ask(this.noSoonerThanTold());
    }

    // The clock of another screen may be a little ahead. What it has told has happened, so that both
    // ask for the same moment and show the same.
    private noSoonerThanTold(): number {
        const now = this.now();
        const told = [...this.told.values()].map((one) => instant(one.event.at));
        return Math.max(now, ...told.filter((at) => at < now + clocks_differ_ms));
    }

    /// Promises: resolved once the event is safe on this device; it is shown before that.
    async tell(event: BakeEvent, photo?: Blob): Promise<void> {
        const one: Waiting = { bake: this.id, event, ...(photo && { photo }) };
        this.waiting = [...this.waiting, one];
        this.show();
        const safe = this.putAway(one);
        this.onTheWay.set(event.id, safe);
        // The network need not wait for the drawer, nor the drawer for the network.
        await Promise.all([safe, this.send()]);
    }

    private async putAway(one: Waiting): Promise<void> {
        try {
            one.order = await (await this.drawer).put({ ...one });
        } catch {
            // No room on the device: it still waits in memory and is sent all the same.
        }
    }

    view(): BakeView {
        const waiting = this.waiting.map((one) => one.event);
        const last = this.state?.last ?? 0;
        const told = [...this.told.values()].sort((one, other) => one.sequence - other.sequence);
        const waits = new Set(waiting.map((event) => event.id));
        const known = told.map((one) => one.event).filter((event) => !waits.has(event.id));
        const ahead = told.filter((one) => one.sequence > last).map((one) => one.event);
        return {
            state: this.state,
            events: [...known, ...waiting],
            untold: [...ahead.filter((event) => !waits.has(event.id)), ...waiting],
            waiting: waiting.length,
            online: this.online,
            missing: this.missing,
            refused: this.refused,
        };
    }

    private show(): void {
        if (!this.closed) this.changed(this.view());
    }

    private took(state: BakeState): void {
        // An answer that was overtaken by a newer one has nothing to say.
        if (this.state && state.last < this.state.last) return;
        this.state = state;
        this.missing = false;
        this.tries = 0;
        this.online = true;
        this.show();
        void this.remember();
        if (this.waiting.length > 0) void this.send();
    }

    private async remember(): Promise<void> {
        const state = this.state;
        if (!state) return;
        const events = [...this.told.values()].map((one) => one.event);
        await (await this.drawer).remember({ bake: this.id, state, events }).catch(() => undefined);
    }

    private failed(cause: unknown): void {
        if (cause instanceof Refused) {
            this.missing = cause.status === 404;
            if (!this.missing) this.refused = cause.message;
            this.online = true;
        } else {
            this.online = false;
            this.later();
        }
        this.show();
    }

    private later(): void {
        if (this.timer || this.closed) return;
        const wait = retry_ms[Math.min(this.tries, retry_ms.length - 1)] ?? 10_000;
        this.tries += 1;
        this.timer = setTimeout(() => {
            this.timer = null;
            this.reconnect();
        }, wait);
    }

    private reconnect(): void {
        if (this.closed) return;
        this.refresh();
        if (!this.stream || this.stream.readyState === EventSource.CLOSED) this.listen();
        void this.send();
    }

    // The browser itself takes the stream up again with Last-Event-ID; only a stream that was closed
    // for good is opened anew, after the last event that is known.
    private listen(): void {
        if (this.closed || typeof EventSource === 'undefined') return;
        this.stream?.close();
        const after = Math.max(0, ...[...this.told.values()].map((one) => one.sequence));
        const stream = new EventSource(`/api/v1/${this.path}/stream?after=${after}`);
        this.stream = stream;
        stream.addEventListener('open', () => {
            this.online = true;
            this.show();
            this.refresh();
            void this.send();
        });
        stream.addEventListener('event', (message: MessageEvent<string>) => {
            this.heard(Number(message.lastEventId), JSON.parse(message.data) as BakeEvent);
        });
        stream.addEventListener('error', () => {
            this.online = false;
            this.show();
            this.later();
        });
    }

    private heard(sequence: number, event: BakeEvent): void {
        this.told.set(event.id, { sequence, event });
        this.show();
        if (sequence > (this.state?.last ?? 0)) this.refresh();
    }

    // Sends what waits, in order; one that the server will never take must not hold up the others.
    private async send(): Promise<void> {
        if (this.sending || this.closed) return;
        this.sending = true;
        try {
            while (this.waiting.length > 0 && !this.closed) {
                const batch = this.batch();
                try {
                    await this.sendBatch(batch);
                } catch (cause) {
                    if (!(cause instanceof Refused) || cause.status === 401) throw cause;
                    if (batch.length > 1) {
                        for (const one of batch) await this.sendAlone(one);
                    } else if (batch[0]) {
                        await this.drop(batch[0], cause);
                    }
                }
            }
        } catch (cause) {
            this.failed(cause);
        } finally {
            this.sending = false;
        }
    }

    private batch(): Waiting[] {
        const photoAt = this.waiting.findIndex((one) => one.photo);
        if (photoAt === 0) return this.waiting.slice(0, 1);
        return this.waiting.slice(0, Math.min(100, photoAt < 0 ? 100 : photoAt));
    }

    private async sendAlone(one: Waiting): Promise<void> {
        try {
            await this.sendBatch([one]);
        } catch (cause) {
            if (!(cause instanceof Refused)) throw cause;
            await this.drop(one, cause);
        }
    }

    private async sendBatch(batch: Waiting[]): Promise<void> {
        const events: BakeEvent[] = [];
        for (const one of batch) {
            if (one.photo && one.event.kind === 'photo' && one.event.photo === '') {
                const { photo } = await ask<{ photo: string }>('POST', 'photos', {
                    bytes: one.photo,
                });
                one.event = { ...one.event, photo };
            }
            events.push(one.event);
        }
        const answer = await ask<{ sequences: number[]; last: number }>(
            'POST',
            `${this.path}/events`,
            { json: { events } },
        );
        events.forEach((event, index) => {
            this.told.set(event.id, { sequence: answer.sequences[index] ?? answer.last, event });
        });
        await this.forget(batch);
        this.online = true;
        this.tries = 0;
        this.show();
        if (answer.last > (this.state?.last ?? 0)) this.refresh();
    }

    private async drop(one: Waiting, cause: Refused): Promise<void> {
        this.refused = cause.message;
        await this.forget([one]);
        this.show();
    }

    private async forget(batch: Waiting[]): Promise<void> {
        const gone = new Set(batch.map((one) => one.event.id));
        this.waiting = this.waiting.filter((one) => !gone.has(one.event.id));
        const drawer = await this.drawer;
        for (const one of batch) {
            await this.onTheWay.get(one.event.id);
            this.onTheWay.delete(one.event.id);
            if (one.order !== undefined) await drawer.take(one.order).catch(() => undefined);
        }
    }
}
