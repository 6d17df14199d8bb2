// SPDX-License-Identifier: Apache-2.0
//
// Speaking and listening by what the browser brings. Both are off until asked for.

export function canSpeak(): boolean {
    return typeof speechSynthesis !== 'undefined';
}

export function speak(words: string): void {
    if (!canSpeak()) return;
    speechSynthesis.cancel();
    const saying = new SpeechSynthesisUtterance(words);
    saying.lang = 'en-GB';
    saying.rate = 0.95;
    speechSynthesis.speak(saying);
}

export function hush(): void {
    if (canSpeak()) speechSynthesis.cancel();
}

export type Command = 'next' | 'done' | 'how_long' | 'not_yet' | 'again';

/// What was meant by what was heard, or nothing. "Not done" must not tick anything.
export function commandIn(heard: string): Command | null {
    const words = ` ${heard.toLowerCase().replace(/[^a-z ]/g, ' ')} `.replace(/ +/g, ' ');
    if (/ (not|isn t|don t|never) /.test(words))
        return / not (yet|ready) /.test(words) ? 'not_yet' : null;
    if (/ how (long|much time) /.test(words)) return 'how_long';
    if (/ (done|ready|finished) /.test(words)) return 'done';
    if (/ (next|what now) /.test(words)) return 'next';
    if (/ (again|repeat) /.test(words)) return 'again';
    return null;
}

interface Recognition extends EventTarget {
    lang: string;
    continuous: boolean;
    interimResults: boolean;
    start(): void;
    stop(): void;
}
interface Heard extends Event {
    resultIndex: number;
    results: { length: number; [index: number]: { [index: number]: { transcript: string } } };
}

function recogniser(): (new () => Recognition) | null {
    const place = globalThis as unknown as Record<string, (new () => Recognition) | undefined>;
    return place['SpeechRecognition'] ?? place['webkitSpeechRecognition'] ?? null;
}

export function canListen(): boolean {
    return recogniser() !== null && window.isSecureContext;
}

/// Listens until told to stop. `refused` is called when the microphone is not given.
export function listen(command: (said: Command) => void, refused: () => void): () => void {
    const Maker = recogniser();
    if (!Maker) {
        refused();
        return () => undefined;
    }
    let going = true;
    const ear = new Maker();
    ear.lang = 'en-GB';
    ear.continuous = true;
    ear.interimResults = false;
    ear.addEventListener('result', (event) => {
        const heard = event as Heard;
        for (let index = heard.resultIndex; index < heard.results.length; index += 1) {
            const meant = commandIn(heard.results[index]?.[0]?.transcript ?? '');
            if (meant) command(meant);
        }
    });
    ear.addEventListener('error', (event) => {
        const why = (event as Event & { error?: string }).error;
        if (why !== 'no-speech' && why !== 'aborted') {
            going = false;
            refused();
        }
    });
    // It stops by itself after a silence.
    ear.addEventListener('end', () => {
        if (going) setTimeout(() => going && ear.start(), 300);
    });
    ear.start();
    return () => {
        going = false;
        ear.stop();
    };
}
