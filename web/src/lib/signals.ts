// SPDX-License-Identifier: Apache-2.0
//
// Ways to call somebody back to the dough: a sound made here, a vibration, a notification, and a
// screen that stays awake. Each may be missing or refused; none is needed by another.

let context: AudioContext | null = null;

/// Browsers let a page sound only after a touch or a key; call this from one.
export function unlockSound(): void {
    if (typeof AudioContext === 'undefined') return;
    context ??= new AudioContext();
    if (context.state === 'suspended') void context.resume().catch(() => undefined);
}

function note(audio: AudioContext, hertz: number, at: number, seconds: number): void {
    const tone = audio.createOscillator();
    const loudness = audio.createGain();
    tone.type = 'triangle';
    tone.frequency.value = hertz;
    // Soft edges: a click is not a bell.
    loudness.gain.setValueAtTime(0, at);
    loudness.gain.linearRampToValueAtTime(0.5, at + 0.03);
    loudness.gain.exponentialRampToValueAtTime(0.001, at + seconds);
    tone.connect(loudness).connect(audio.destination);
    tone.start(at);
    tone.stop(at + seconds);
}

/// Two rising notes, three times: to be heard over a tap that runs.
export function sound(): boolean {
    if (!context || context.state !== 'running') return false;
    for (let time = 0; time < 3; time += 1) {
        const at = context.currentTime + time * 0.9;
        note(context, 523.25, at, 0.45);
        note(context, 783.99, at + 0.22, 0.6);
    }
    return true;
}

export function vibrate(): void {
    navigator.vibrate?.([400, 150, 400]);
}

export function canNotify(): boolean {
    return typeof Notification !== 'undefined' && window.isSecureContext;
}

export async function askToNotify(): Promise<boolean> {
    if (!canNotify()) return false;
    return (await Notification.requestPermission()) === 'granted';
}

export async function notify(text: string, path: string): Promise<void> {
    if (!canNotify() || Notification.permission !== 'granted') return;
    const options = { body: text, tag: path, data: { path } };
    try {
        // A phone shows it only through its worker.
        const worker = await navigator.serviceWorker?.getRegistration();
        if (worker) await worker.showNotification('Loafwright', options);
        else new Notification('Loafwright', options);
    } catch {
        // Refused after all; the sound and the screen have called.
    }
}

export type Awake = 'off' | 'on' | 'refused';

/// Keeps the screen awake while it is wanted; the browser lets go of it whenever the page is hidden.
export class StayAwake {
    private lock: WakeLockSentinel | null = null;
    private wanted = false;
    private readonly seen = (): void => {
        if (document.visibilityState === 'visible') void this.take();
    };

    constructor(private readonly changed: (state: Awake) => void) {}

    async start(): Promise<void> {
        if (this.wanted) return;
        this.wanted = true;
        document.addEventListener('visibilitychange', this.seen);
        await this.take();
    }

    stop(): void {
        this.wanted = false;
        document.removeEventListener('visibilitychange', this.seen);
        void this.lock?.release().catch(() => undefined);
        this.lock = null;
        this.changed('off');
    }

    private async take(): Promise<void> {
        if (!this.wanted) return;
        try {
            if (!navigator.wakeLock) throw new Error('this browser has no wake lock');
            this.lock = await navigator.wakeLock.request('screen');
            this.changed('on');
        } catch {
            this.changed('refused');
        }
    }
}
