// SPDX-License-Identifier: Apache-2.0
//
// The one door to the engine's verbs. Here they are asked over HTTP; whoever calls does not know.
import type {
    Answer,
    BakeRequest,
    BakeState,
    BreadProgress,
    BreadWish,
    Choices,
    Findings,
    Formula,
    Intake,
    PageForm,
    PlanOutcome,
    Provisions,
    Reading,
    TakenIn,
} from './api';
import { ask, askBytes } from './http';

/// The wish alone; nothing where there is none.
export function wishOf({ size, yeast }: BreadWish): BreadWish {
    return { ...(size && { size }), ...(yeast && { yeast }) };
}

/// What was understood of a recipe, as it is written or as it is wanted. Spans are byte offsets into
/// `text` as UTF-8.
export function read(
    text: string,
    name: string,
    answers: Answer[],
    wish: BreadWish = {},
): Promise<Reading> {
    return ask('POST', 'read', { json: { text, name, answers, ...wish } });
}

/// The day of these breads, or why it cannot be and what would work.
export function plan(request: BakeRequest, signal?: AbortSignal): Promise<PlanOutcome> {
    return ask('POST', 'plan', { json: request, ...(signal && { signal }) });
}

/// What was likely behind what the baker saw of one bread of a bake, and the one thing to change.
export function findings(bake: string, bread: number): Promise<Findings> {
    return ask('GET', `bakes/${encodeURIComponent(bake)}/findings?bread=${bread}`);
}

/// What to buy, to have out and to mind, for all breads together.
export async function gather(request: BakeRequest): Promise<Provisions> {
    return (await ask<{ provisions: Provisions }>('POST', 'gather', { json: request })).provisions;
}

/// What got better, bread by bread.
export async function progress(): Promise<BreadProgress[]> {
    return (await ask<{ breads: BreadProgress[] }>('GET', 'progress')).breads;
}

/// A recipe in percent of its flour, and what is unusual about it.
export async function formula(
    text: string,
    name: string,
    answers: Answer[],
    wish: BreadWish = {},
): Promise<Formula> {
    const json = { text, name, answers, ...wish };
    return (await ask<{ formula: Formula }>('POST', 'formula', { json })).formula;
}

/// Which of these breads suit the day and the baker, the best first, and why.
export function choose(request: BakeRequest, signal?: AbortSignal): Promise<Choices> {
    return ask('POST', 'choose', { json: request, ...(signal && { signal }) });
}

export interface PageWish {
    form: PageForm;
    paper?: 'a4' | 'letter';
    large_print?: boolean;
    address?: string;
}

/// The page as a file.
export function page(request: BakeRequest, wish: PageWish): Promise<Blob> {
    return askBytes('POST', 'page', { json: { request, ...wish } });
}

/// A bake as it stands at `now` (RFC 3339).
export function state(bake: string, now: string, signal?: AbortSignal): Promise<BakeState> {
    const path = `bakes/${encodeURIComponent(bake)}/state?now=${encodeURIComponent(now)}`;
    return ask('GET', path, signal ? { signal } : {});
}

/// The page of a bake as it stands at `now`, as a file.
export function pageOfBake(bake: string, form: PageForm, now: string): Promise<Blob> {
    const query = `form=${form}&now=${encodeURIComponent(now)}`;
    return askBytes('GET', `bakes/${encodeURIComponent(bake)}/page?${query}`);
}

const look_every_ms = 250;

/// The words of a photo, a PDF or a web page, or of several photos in order; `told` hears how far it
/// is, in percent. The id is what pageAddress wants.
///
/// Errors: Refused where no words can be taken; AbortError, after the server has stopped too.
export async function takeIn(
    files: Blob[],
    told: (percent: number) => void,
    signal: AbortSignal,
): Promise<{ id: string; taken: TakenIn }> {
    const sizes = files.map((file) => file.size).join(',');
    const bytes = new Blob(files, { type: 'application/octet-stream' });
    const { intake } = await ask<{ intake: Intake }>('POST', `intake?sizes=${sizes}`, {
        bytes,
        signal,
    });
    const path = `intake/${encodeURIComponent(intake.id)}`;
    try {
        for (;;) {
            const now = (await ask<{ intake: Intake }>('GET', path, { signal })).intake;
            told(now.percent);
            if (now.taken) return { id: intake.id, taken: now.taken };
            await new Promise((resolve) => setTimeout(resolve, look_every_ms));
            signal.throwIfAborted();
        }
    } catch (cause) {
        if (signal.aborted) await ask('DELETE', path).catch(() => undefined);
        throw cause;
    }
}

/// Where the picture of a page is, as its words were read from it.
export function pageAddress(intake: string, page: number): string {
    return `/api/v1/intake/${encodeURIComponent(intake)}/pages/${page}`;
}
