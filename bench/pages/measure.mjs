// SPDX-License-Identifier: Apache-2.0
//
// How quick the pages are, measured in a real browser on the real program: measure.mjs PROGRAM [RUNS]
// The first view on a slow phone and line; a plan that follows a finger; a tick from one screen to another.
// What took part of the time on the test's side of the browser's protocol is not counted.
import { beginBake, bring, planned, recipe } from '../../tests/pages/baking.mjs';
import { journey } from '../../tests/pages/browser.mjs';
import { fromTickToTick, summary } from '../../tests/pages/measuring.mjs';

const runs = Number(process.argv[3] ?? 15);
const allowed = { view_ms: 1000, frames: 2, tick_ms: 100 };
const line_bits = 1_600_000;
const slower = 4;

const told = (what, of, unit, most) =>
    console.log(
        `${what}: ratio ${(of.median / most).toFixed(2)} of ${most} ${unit}; median ${of.median}, ${of.least} to ${of.most}, ${of.all.length} runs`,
    );

// When the field for the recipe stands there and takes text, and when everything on the screen answers (the
// field for a time comes last), each after the frame it was drawn in.
function watchFirstView() {
    const all = new MutationObserver((_, watch) => {
        if (!document.querySelector('input[type=time], pre')) return;
        watch.disconnect();
        requestAnimationFrame(() => setTimeout(() => (globalThis.allAnswers = performance.now()), 0));
    });
    all.observe(document, { childList: true, subtree: true });
    new MutationObserver((_, watch) => {
        if (!document.querySelector('textarea, pre')) return;
        watch.disconnect();
        requestAnimationFrame(() => {
            const channel = new MessageChannel();
            channel.port1.onmessage = () => (globalThis.firstView = performance.now());
            channel.port2.postMessage(null);
        });
    }).observe(document, { childList: true, subtree: true });
}

// An empty browser each time: nothing of the pages is kept from the run before. Of another path, the floor: what
// this browser takes for a document of one word.
async function firstView(person, wait_ms, path = '/') {
    const took = [];
    const all = [];
    for (let run = 0; run < runs; run += 1) {
        const page = await person({ serviceWorkers: 'block' });
        await page.addInitScript(watchFirstView);
        const client = await page.context().newCDPSession(page);
        await client.send('Network.enable');
        await client.send('Network.emulateNetworkConditions', {
            offline: false,
            latency: wait_ms,
            downloadThroughput: line_bits / 8,
            uploadThroughput: line_bits / 8,
        });
        await client.send('Emulation.setCPUThrottlingRate', { rate: slower });
        await page.goto(path, { waitUntil: 'commit' });
        await page.waitForFunction(() => globalThis.firstView && globalThis.allAnswers);
        took.push(await page.evaluate(() => globalThis.firstView));
        all.push(await page.evaluate(() => globalThis.allAnswers));
        await page.context().close();
    }
    return { ...summary(took), answers: summary(all) };
}

// The time to eat is dragged, at least five minutes a move, each move after the plan of the one before. From the move as the
// page gets it until the plan's times have changed: in ms, and in frames, the one that shows it counted.
async function behindTheFinger(page) {
    const grip = page.getByRole('slider', { name: 'Eat' }).locator('span');
    await grip.scrollIntoViewIfNeeded();
    const box = await grip.boundingBox();
    const x = box.x + box.width / 2;
    let y = box.y + box.height / 2;
    await page.mouse.move(x, y);
    await page.mouse.down();
    const ms = [];
    const frames = [];
    for (let run = 0; run < runs; run += 1) {
        const seen = page.evaluate(
            () =>
                new Promise((resolve) => {
                    const shown = document.querySelector('.times b');
                    let at = 0;
                    let drawn = 0;
                    const frame = () => {
                        drawn += 1;
                        requestAnimationFrame(frame);
                    };
                    addEventListener(
                        'pointermove',
                        (event) => {
                            at ||= event.timeStamp;
                            requestAnimationFrame(frame);
                        },
                        { capture: true, once: true },
                    );
                    new MutationObserver((_, watch) => {
                        if (at === 0) return;
                        watch.disconnect();
                        resolve({ ms: performance.now() - at, frames: drawn + 1 });
                    }).observe(shown, { characterData: true, subtree: true, childList: true });
                }),
        );
        await page.evaluate(() => undefined); // the watch is set by then
        y += 10;
        await page.mouse.move(x, y);
        const took = await seen;
        ms.push(took.ms);
        frames.push(took.frames);
        await planned(page);
        await page.waitForTimeout(60);
    }
    await page.mouse.up();
    return { ms: summary(ms), frames: summary(frames) };
}

journey(async ({ person }) => {
    for (const wait_ms of [0, 150]) {
        const what = `first usable view, ${slower} times slower, ${line_bits / 1e6} Mbit/s, ${wait_ms} ms to answer`;
        const view = await firstView(person, wait_ms);
        told(what, view, 'ms', allowed.view_ms);
        const { median, least, most } = view.answers;
        console.log(`  everything on it answers: median ${median} ms, ${least} to ${most}`);
        const floor = await firstView(person, wait_ms, '/healthz');
        console.log(`  a document of one word: median ${floor.median} ms, ${floor.least} to ${floor.most}`);
    }
    const phone = await person({});
    await bring(phone, recipe, { later: 1 });
    await phone.getByRole('link', { name: 'Day', exact: true }).click();
    await phone.getByRole('slider', { name: 'Eat' }).waitFor();
    await planned(phone);
    const finger = await behindTheFinger(phone);
    told('the plan behind the finger', finger.frames, 'frames', allowed.frames);
    console.log(`  in ms: median ${finger.ms.median}, ${finger.ms.least} to ${finger.ms.most}`);
    const id = await beginBake(phone);
    const tablet = await person({ width: 768, height: 1024 });
    await tablet.goto(`/bake/${id}`);
    await tablet.locator('.now').waitFor();
    told('a tick from screen to screen', await fromTickToTick(phone, tablet, /Bake/, runs), 'ms', allowed.tick_ms);
});
