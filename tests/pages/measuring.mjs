// SPDX-License-Identifier: Apache-2.0
//
// Times taken inside the pages, where a finger and an eye are; nothing of the test's own way there counts.
import { line } from './baking.mjs';

export function summary(all) {
    const sorted = [...all].sort((one, other) => one - other);
    const round = (value) => Math.round(value * 10) / 10;
    return {
        all,
        least: round(sorted[0]),
        median: round(sorted[Math.floor(sorted.length / 2)]),
        most: round(sorted.at(-1)),
    };
}

/// From the press on one screen until the row on the other has changed, in ms. Both screens are of one browser,
/// so that their clocks are one.
export async function fromTickToTick(here, there, title, times) {
    const pressed = await line(here, title).elementHandle();
    const changed = await line(there, title).elementHandle();
    const took = [];
    for (let turn = 0; turn < times; turn += 1) {
        const seen = there.evaluate(
            (row) =>
                new Promise((resolve) => {
                    new MutationObserver((_, watch) => {
                        watch.disconnect();
                        resolve(performance.timeOrigin + performance.now());
                    }).observe(row, { attributeFilter: ['aria-checked'] });
                }),
            changed,
        );
        await there.evaluate(() => undefined); // the watch is set by then
        const press = here.evaluate(
            (row) =>
                new Promise((resolve) => {
                    row.addEventListener('click', () => resolve(performance.timeOrigin + performance.now()), {
                        once: true,
                        capture: true,
                    });
                }),
            pressed,
        );
        await pressed.click();
        took.push((await seen) - (await press));
        await here.waitForTimeout(150);
    }
    return summary(took);
}
