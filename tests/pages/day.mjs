// SPDX-License-Identifier: Apache-2.0
//
// The day and the kitchen as they are: an oven that others want, a room that warms up by noon, an hour away.
import { bring, button, noon, planned, until } from './baking.mjs';
import { fingerDrags } from './finger.mjs';
import { journey } from './browser.mjs';

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon, hasTouch: true });
    const kept = async () => (await (await fetch(`${base}/api/v1/notebook`)).json()).settings;
    const start = async (title) =>
        (await page.locator('.stage', { hasText: title }).locator('b').first().innerText()).trim();

    await bring(page);
    await page.getByRole('link', { name: 'Day', exact: true }).click();
    await page.getByRole('slider', { name: 'Eat' }).waitFor();
    await planned(page);
    const baked = await start('Bake');
    check(/^1[67]:\d\d$/.test(baked), `on a free day the loaf bakes before the meal, at ${baked}`);

    // The oven is wanted just then.
    await button(page, 'Add a time for others').click();
    const taken = page.getByRole('group', { name: 'Oven taken' });
    await taken.getByLabel('From', { exact: true }).fill('16:15');
    await taken.getByLabel('To', { exact: true }).fill('18:00');
    await planned(page);
    const around = await start('Bake');
    check(around <= '15:45', `with the oven taken from 16:15 it bakes before that, at ${around}`);
    check(await page.getByRole('slider', { name: 'Oven taken from' }).isVisible(), 'which is seen on the clock');
    await fingerDrags(page, page.getByRole('slider', { name: 'Oven taken to' }), -48);
    await planned(page);
    const moved = await taken.getByLabel('To', { exact: true }).inputValue();
    check(moved < '18:00' && moved > '16:15', `an end can be dragged: to ${moved}`);
    check(await until(async () => (await kept())?.day?.oven_claims?.[0]?.to === moved), 'and is kept');
    await taken.getByRole('button', { name: 'take out' }).click();
    await planned(page);
    check((await start('Bake')) === baked, 'taken out, the plan is as before');

    await button(page, 'Add time away').click();
    await planned(page);
    check((await page.getByRole('slider', { name: 'Away from' }).count()) > 0, 'an hour away is on the clock, too');

    // The room through the day
    const rise = await start('Shape');
    await button(page, 'It changes through the day').click();
    const warm = page.getByLabel('How warm, °C');
    await warm.first().fill('18');
    await warm.nth(1).fill('26');
    await warm.nth(1).press('Tab');
    await planned(page);
    const warmed = await start('Shape');
    const begun = await start('Weigh');
    check(warmed !== rise, `in a room of 26 °C the rise is another: shaped at ${warmed}, not ${rise}`);
    await page.reload();
    await page.getByRole('slider', { name: 'Eat' }).waitFor();
    await planned(page);
    check((await warm.count()) === 2 && (await start('Weigh')) === begun, 'a page loaded again has it all');
    await button(page, 'Add a time').click();
    check((await warm.count()) === 3, 'a third time can be said');
    await button(page, 'The same all day').click();
    check((await warm.count()) === 0, 'or the same all day again');
    await page.getByRole('slider', { name: 'How warm the kitchen is, °C' }).waitFor();
});
