// SPDX-License-Identifier: Apache-2.0
//
// How this device calls and is called: what is on, what the browser allows, and the act of calling.
import { recallHere, rememberHere } from './local';
import * as signals from './signals';
import * as speech from './speech';

interface Wishes {
    sound: boolean;
    awake: boolean;
    aloud: boolean;
}

export class Calls {
    wishes: Wishes = $state(
        recallHere<Wishes>('calls', { sound: true, awake: true, aloud: false }),
    );
    /// Whether the browser lets us sound; it wants a touch first.
    sounding = $state(false);
    awake = $state<signals.Awake>('off');
    notifying = $state(
        signals.canNotify() && Notification.permission === 'granted' ? 'on' : 'off',
    ) as 'on' | 'off' | 'refused';
    listening = $state<'off' | 'on' | 'refused'>('off');

    private readonly stay = new signals.StayAwake((state) => {
        this.awake = state;
    });
    private deaf: (() => void) | null = null;
    private ringing: ReturnType<typeof setInterval> | null = null;

    private remember(): void {
        rememberHere('calls', $state.snapshot(this.wishes));
    }

    open(): () => void {
        const touched = (): void => {
            if (this.wishes.sound) signals.unlockSound();
            this.sounding = true;
        };
        addEventListener('pointerdown', touched, { once: true });
        addEventListener('keydown', touched, { once: true });
        if (this.wishes.awake) void this.stay.start();
        return () => {
            removeEventListener('pointerdown', touched);
            removeEventListener('keydown', touched);
            this.stay.stop();
            this.quiet();
            this.deaf?.();
            speech.hush();
        };
    }

    setSound(on: boolean): void {
        this.wishes.sound = on;
        this.remember();
        if (!on) return;
        signals.unlockSound();
        // A first sound, so that one knows it.
        setTimeout(() => signals.sound(), 100);
    }

    setAwake(on: boolean): void {
        this.wishes.awake = on;
        this.remember();
        if (on) void this.stay.start();
        else this.stay.stop();
    }

    setAloud(on: boolean): void {
        this.wishes.aloud = on;
        this.remember();
        if (on) speech.speak('I will say what comes next.');
        else speech.hush();
    }

    async setNotify(): Promise<void> {
        this.notifying = (await signals.askToNotify()) ? 'on' : 'refused';
    }

    setListening(on: boolean, command: (said: speech.Command) => void): void {
        this.deaf?.();
        this.deaf = null;
        this.listening = on ? 'on' : 'off';
        if (!on) return;
        this.deaf = speech.listen(command, () => {
            this.listening = 'refused';
            this.deaf = null;
        });
    }

    say(words: string): void {
        if (this.wishes.aloud || this.listening === 'on') speech.speak(words);
    }

    /// Sounds now and every twelve seconds for two minutes, or until quiet().
    call(words: string, path: string): void {
        this.quiet();
        let times = 0;
        const once = (): void => {
            times += 1;
            if (this.wishes.sound) signals.sound();
            signals.vibrate();
            if (times >= 10) this.quiet();
        };
        once();
        this.ringing = setInterval(once, 12_000);
        void signals.notify(words, path);
        if (this.wishes.aloud) setTimeout(() => speech.speak(words), 2500);
    }

    quiet(): void {
        if (this.ringing) clearInterval(this.ringing);
        this.ringing = null;
    }
}
