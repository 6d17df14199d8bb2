// SPDX-License-Identifier: Apache-2.0
//
// Takes the two pictures of the README anew: pictures.mjs PROGRAM FOLDER
import { readFileSync } from 'node:fs';

import { beginBake, bring, button, isNow, planned } from './baking.mjs';
import { journey } from './browser.mjs';

const loaf = readFileSync(new URL('../../examples/first-loaf.md', import.meta.url), 'utf8');
const folder = process.argv[3];

journey(async ({ person }) => {
    const page = await person({ at: new Date('2026-11-28T12:30:00Z'), height: 720, reducedMotion: 'reduce' });
    const taken = async (name) => {
        await page.evaluate(() => scrollTo(0, 0));
        await page.screenshot({ path: `${folder}/${name}.png`, animations: 'disabled' });
    };
    await bring(page, loaf);
    await page.getByRole('link', { name: 'Day', exact: true }).click();
    await planned(page);
    await taken('day');
    await beginBake(page);
    await page.clock.fastForward('30:20');
    await button(page, 'Begin').click();
    await page.clock.fastForward('29:30');
    await button(page, 'Done').click();
    await isNow(page, 'First rise');
    await page.waitForFunction(() => !document.querySelector('main').textContent.includes('Opening'));
    await taken('bake');
});
