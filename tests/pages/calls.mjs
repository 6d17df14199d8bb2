// SPDX-License-Identifier: Apache-2.0
//
// How a bake calls, and how it is told things without typing. The doors are the browser's own: its audio, its
// permissions, its worker, its wake lock, its picture decoder; calls through them are counted on their way.
//
// One is not: a browser without a window has no recogniser that answers, so the ear is a stand-in that the test
// lets hear. That covers our part of listening, not the browser's.
import { beginBake, bring, button, isNow, kept, noon, until } from './baking.mjs';
import { journey } from './browser.mjs';

// Counts what goes through a door, and lets it through.
function counted() {
    const calls = { notes: 0, vibrated: [], spoken: [], locks: [], ears: [] };
    globalThis.counted = calls;
    const { start } = OscillatorNode.prototype;
    OscillatorNode.prototype.start = function (...words) {
        calls.notes += 1;
        return start.apply(this, words);
    };
    const { vibrate } = Navigator.prototype;
    Navigator.prototype.vibrate = function (pattern) {
        calls.vibrated.push(pattern);
        return vibrate.call(this, pattern);
    };
    const { speak } = SpeechSynthesis.prototype;
    SpeechSynthesis.prototype.speak = function (words) {
        calls.spoken.push(words.text);
        return speak.call(this, words);
    };
    const { request } = WakeLock.prototype;
    WakeLock.prototype.request = async function (kind) {
        const lock = await request.call(this, kind);
        calls.locks.push(lock);
        return lock;
    };
    // The stand-in.
    globalThis.webkitSpeechRecognition = class extends EventTarget {
        start() {
            this.open = true;
            calls.ears.push(this);
        }
        stop() {
            this.open = false;
        }
        hear(transcript) {
            const event = new Event('result');
            event.resultIndex = 0;
            event.results = [[{ transcript }]];
            this.dispatchEvent(event);
        }
        refuse() {
            const event = new Event('error');
            event.error = 'not-allowed';
            this.dispatchEvent(event);
        }
    };
    globalThis.SpeechRecognition = undefined;
}

journey(
    async ({ base, check, person }) => {
        const page = await person({ at: noon, calls: true, permissions: ['notifications', 'screen-wake-lock'] });
        await page.addInitScript(counted);
        await bring(page);
        const id = await beginBake(page);
        await page.evaluate(() => navigator.serviceWorker.ready);
        const calls = (what) => page.evaluate((name) => globalThis.counted[name], what);
        const settings = page.getByRole('region', { name: 'How it calls you' });
        const words = await settings.innerText();
        check(/sleeps may not ring/.test(words), 'the page says that a sleeping phone may not ring');
        check(/may leave this phone/.test(words), 'and that speech may leave the phone');
        const pressed = (name) => button(settings, name).getAttribute('aria-pressed');
        check((await pressed('Listen to me')) === 'false', 'listening is off until asked for');
        check((await pressed('Say it aloud')) === 'false', 'speaking is off until asked for');

        const download = page.waitForEvent('download');
        await button(settings, 'Alarms into the calendar').click();
        check((await download).suggestedFilename() === 'bake.ics', 'the alarms go into a calendar file');

        // The screen stays awake
        await until(async () => (await calls('locks')).length > 0);
        const awake = () => page.evaluate(() => globalThis.counted.locks.at(-1)?.released === false);
        check(await awake(), 'the screen is kept awake');
        await button(settings, 'Screen stays awake').click();
        check(await until(async () => !(await awake())), 'until one says no');
        await button(settings, 'Screen stays awake').click();
        check(await until(awake), 'and again when one says yes');

        // A call
        check((await calls('notes')) === 0, 'nothing sounds before its time');
        await button(settings, 'Say it aloud').click();
        await page.clock.fastForward('31:00');
        const call = page.getByRole('alertdialog');
        await call.waitFor();
        const { width, height } = await call.boundingBox();
        check(width === 360 && height === 740, 'a call fills the screen');
        check(await until(async () => (await calls('notes')) >= 6), 'and sounds, six notes');
        check((await calls('vibrated')).length > 0, 'and vibrates');
        const shown = () =>
            page.evaluate(async () => {
                const worker = await navigator.serviceWorker.getRegistration();
                return (await worker.getNotifications()).map((one) => one.body);
            });
        check(await until(async () => (await shown()).length > 0), `and notifies: ${(await shown()).join()}`);
        const look = () =>
            call.evaluate((box) => {
                const moving = box.getAnimations({ subtree: true }).length;
                return `${getComputedStyle(box).backgroundColor} ${moving}`;
            });
        const first = await look();
        await page.clock.fastForward('00:13');
        check((await calls('notes')) >= 12, 'it sounds again after twelve seconds');
        check((await look()) === first && first.endsWith(' 0'), 'the screen stays as it is: nothing flashes');
        await until(async () => (await calls('spoken')).some((one) => /Weigh/.test(one)));
        check((await calls('spoken')).some((one) => /Weigh/.test(one)), 'and it is said aloud, as was asked for');
        await button(call, 'Seen').click();
        await call.waitFor({ state: 'detached' });
        const quiet = await calls('notes');
        await page.clock.fastForward('00:30');
        check((await calls('notes')) === quiet, 'once it is seen it is quiet');

        // Said to the phone
        await button(settings, 'Listen to me').click();
        const hear = (said) => page.evaluate((said) => globalThis.counted.ears.at(-1).hear(said), said);
        const lastSaid = async () => (await calls('spoken')).at(-1);
        await button(page, 'Begin').click();
        await isNow(page, 'Weigh');
        await hear('how long');
        check(/^Weigh.* in .* minutes?\.$/.test(await lastSaid()), `“how long” is answered: ${await lastSaid()}`);
        await hear('next');
        check(/^Next: First rise/.test(await lastSaid()), `“next” is answered: ${await lastSaid()}`);
        await hear('that is not done');
        await hear('done');
        await isNow(page, 'First rise');
        const done = (await kept(base, id)).events.filter((one) => one.kind === 'done');
        check(done.length === 1, '“done” ticks one line, and “not done” none');
        await button(settings, 'Listen to me').click();
        check(
            await page.evaluate(() => globalThis.counted.ears.every((ear) => !ear.open)),
            'pressed again it no longer listens',
        );
        await button(settings, 'Listen to me').click();
        await page.evaluate(() => globalThis.counted.ears.at(-1).refuse());
        await settings.getByText('The microphone was not given.').waitFor();
        check((await pressed('Listen to me')) === 'false', 'a microphone that is not given is said to be so');

        // A photo in one tap
        const chooser = page.waitForEvent('filechooser');
        await page.getByText('Photo', { exact: true }).click();
        const drawn = await page.evaluate(() => {
            const canvas = document.createElement('canvas');
            canvas.width = 2400;
            canvas.height = 1200;
            canvas.getContext('2d').fillRect(0, 0, 900, 900);
            return canvas.toDataURL('image/png').split(',')[1];
        });
        await (await chooser).setFiles({
            name: 'crumb.png',
            mimeType: 'image/png',
            buffer: Buffer.from(drawn, 'base64'),
        });
        await page.getByText('The photo is kept.').waitFor();
        await until(async () => (await kept(base, id)).events.some((one) => one.kind === 'photo'));
        await page.getByRole('link', { name: 'What happened' }).first().click();
        const photo = page.locator('main img');
        await photo.waitFor();
        await photo.scrollIntoViewIfNeeded();
        const size = () => photo.evaluate((one) => `${one.naturalWidth}×${one.naturalHeight}`);
        check(await until(async () => (await size()) === '1600×800'), `the log shows it, made smaller: ${await size()}`);
        const wrong = await fetch(new URL(await photo.getAttribute('src'), base));
        check(wrong.headers.get('content-type') === 'image/jpeg', 'as a plain picture');

        // Refused
        const other = await person({ at: noon, calls: true, permissions: [] });
        await other.goto(`/bake/${id}`);
        await button(other, 'Notification').click();
        await other.getByText('This browser gives no notifications for this page.').waitFor();
        check(true, 'where notifications are refused the page says so');
        await other.getByText('does not keep the screen awake here').waitFor();
        check(true, 'and where the screen is not kept awake');
    },
    { also: ['--autoplay-policy=document-user-activation-required'] },
);
