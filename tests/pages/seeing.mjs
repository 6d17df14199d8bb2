// SPDX-License-Identifier: Apache-2.0
//
// What can be said of any screen as it stands: what axe-core objects to, what scrolls sideways, what is too small
// for a finger; and a picture of it, where LOAFWRIGHT_PICTURES names a folder for them.
import { mkdirSync, readFileSync } from 'node:fs';

import { need } from './browser.mjs';

const axe = readFileSync(need.resolve('axe-core/axe.min.js'), 'utf8');

export async function accessible(page, name, check) {
    if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe);
    const found = await page.evaluate(async () => {
        const result = await globalThis.axe.run(document, { resultTypes: ['violations'] });
        return result.violations.map((one) => `${one.id} at ${one.nodes[0].target.join(' ')}`);
    });
    check(found.length === 0, `${name}: axe-core finds nothing${found.length ? `, but ${found.join('; ')}` : ''}`);
}

export async function fits(page, name, check) {
    const sideways = await page.evaluate(() => {
        const over = document.documentElement.scrollWidth - innerWidth;
        const box = document.querySelector('dialog[open]');
        return Math.max(over, box ? box.scrollWidth - box.clientWidth : 0);
    });
    check(sideways <= 0, `${name}: nothing scrolls sideways${sideways > 0 ? `, but ${sideways} px` : ''}`);
}

/// What can be pressed is at least so many pixels high and wide; a label counts for the box it holds. Links inside
/// a sentence are left out, as WCAG 2.5.8 does.
export async function pressable(page, name, least, check, inside = 'body') {
    const small = await page.evaluate(
        ([least, inside]) => {
            const front = document.querySelector('dialog[open]');
            const all = (front ?? document.querySelector(inside)).querySelectorAll(
                'button, a[href], input, select, textarea, [role=slider] span',
            );
            return [...all].flatMap((one) => {
                const target = one.closest('label') ?? one;
                if (target.matches('a') && target.closest('p')) return [];
                if (target.matches('.skip, .unseen')) return [];
                const { width, height } = target.getBoundingClientRect();
                if (width === 0 || (width >= least - 0.5 && height >= least - 0.5)) return [];
                const words = (target.getAttribute('aria-label') ?? target.textContent).trim().slice(0, 30);
                return [`${words || target.tagName} ${Math.round(width)}×${Math.round(height)}`];
            });
        },
        [least, inside],
    );
    check(small.length === 0, `${name}: what is pressed measures ${least} px${small.length ? `, but ${small.join('; ')}` : ''}`);
}

const folder = process.env.LOAFWRIGHT_PICTURES;
if (folder) mkdirSync(folder, { recursive: true });

export async function picture(page, name, whole = true) {
    if (!folder) return;
    await page.screenshot({ path: `${folder}/${name}.png`, fullPage: whole, animations: 'disabled' });
}

const sizes = [
    ['phone', 360, 740],
    ['side', 640, 360],
    ['tablet', 768, 1024],
    ['desk', 1280, 800],
];
export const finger_px = 44;
export const knuckle_px = 64;

/// A screen light and dark, and in every size; afterwards it is light and a phone's.
export async function lookedAt(page, name, check, { inside = 'main', least = finger_px } = {}) {
    for (const colorScheme of ['light', 'dark']) {
        await page.emulateMedia({ colorScheme });
        await accessible(page, `${name}, ${colorScheme}`, check);
        if (colorScheme === 'dark') await picture(page, `${name}-dark-360`, false);
    }
    await page.emulateMedia({ colorScheme: 'light' });
    for (const [kind, width, height] of sizes) {
        await page.setViewportSize({ width, height });
        await fits(page, `${name}, ${width}`, check);
        await pressable(page, `${name}, ${width}`, least, check, inside);
        await picture(page, `${name}-${kind}-${width}`, inside !== 'dialog');
    }
    await page.setViewportSize({ width: 360, height: 740 });
}
