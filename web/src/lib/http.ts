// SPDX-License-Identifier: Apache-2.0
//
// One request to our own server. Used by the two doors, engine.ts and keep.ts, and by nobody else.
import type { Diagnostic } from './api';

/// The server understood and said no; `diagnostics` says what to do.
export class Refused extends Error {
    constructor(
        readonly status: number,
        readonly diagnostics: Diagnostic[],
    ) {
        super(diagnostics.map((one) => `${one.what} ${one.do_this}`.trim()).join(' '));
    }
}

/// No answer: no network, or the server is not running. Trying again later is right.
export class Unreachable extends Error {}

interface Sending {
    json?: unknown;
    bytes?: Blob;
    signal?: AbortSignal;
}

async function send(method: string, path: string, sending: Sending): Promise<Response> {
    const headers: Record<string, string> = {};
    let body: BodyInit | null = null;
    if (sending.json !== undefined) {
        headers['Content-Type'] = 'application/json';
        body = JSON.stringify(sending.json);
    } else if (sending.bytes) {
        headers['Content-Type'] = sending.bytes.type || 'application/octet-stream';
        body = sending.bytes;
    }
    let response: Response;
    try {
        response = await fetch(`/api/v1/${path}`, {
            method,
            headers,
            body,
            signal: sending.signal ?? null,
            credentials: 'same-origin',
        });
    } catch (cause) {
        if (cause instanceof DOMException && cause.name === 'AbortError') throw cause;
        throw new Unreachable('no answer from the server', { cause });
    }
    if (response.ok) return response;
    const said: unknown = await response.json().catch(() => null);
    const told = said as { error?: Diagnostic[]; impossible?: { why: string } } | null;
    const why = told?.impossible?.why;
    // A day that cannot be is an answer as well: its reason is what there is to say.
    const diagnostics = why
        ? [{ code: 'impossible', severity: 'error', what: why, where: '', do_this: '' }]
        : told?.error;
    // What stands between us and the server (a proxy, say) speaks no JSON: that is no refusal.
    if (!diagnostics || response.status >= 500) {
        throw new Unreachable(
            diagnostics?.map((one) => `${one.what} ${one.do_this}`).join(' ') ??
                `the server answered ${response.status}`,
        );
    }
    throw new Refused(response.status, diagnostics);
}

/// Needs:  a path below /api/v1/.
/// Errors: Refused, Unreachable, or AbortError when `signal` said so.
export async function ask<Answer>(
    method: string,
    path: string,
    sending: Sending = {},
): Promise<Answer> {
    const response = await send(method, path, sending);
    if (response.status === 204) return undefined as Answer;
    return (await response.json()) as Answer;
}

export async function askBytes(method: string, path: string, sending: Sending = {}): Promise<Blob> {
    return (await send(method, path, sending)).blob();
}
