// SPDX-License-Identifier: Apache-2.0
//
// What stands there before the scripts have come: a field that takes a recipe, and nothing that is wrong.
import { button, planned, recipe } from './baking.mjs';
import { journey } from './browser.mjs';

journey(async ({ check, person }) => {
    // What a worker of the pages has kept comes past the hold below.
    const page = await person({ serviceWorkers: 'block' });
    // The scripts wait until they are let go.
    let letGo;
    const held = async () => {
        await page.unrouteAll();
        const gone = new Promise((resolve) => (letGo = resolve));
        await page.route('**/assets/*.js', async (route) => {
            await gone;
            await route.continue();
        });
    };
    const open = async (path) => {
        await held();
        await page.goto(path, { waitUntil: 'commit' });
        await page.locator('#app').waitFor({ state: 'attached' });
    };
    const field = page.getByRole('textbox', { name: /^Paste the recipe/ });

    await open('/');
    await field.fill(recipe);
    await field.focus();
    check(await button(page, 'Read it').isVisible(), 'the first screen is there before the scripts');
    const stood = await page.getByRole('heading', { level: 1 }).boundingBox();
    letGo();
    await page.getByLabel('Eat at, day').locator('option').nth(1).waitFor({ state: 'attached' });
    check((await field.inputValue()) === recipe, 'what was typed before them is still there');
    check(await field.evaluate((one) => one === document.activeElement), 'and one goes on typing in it');
    const stands = await page.getByRole('heading', { level: 1 }).boundingBox();
    check(stood.y === stands.y && stood.height === stands.height, 'nothing has moved');
    await button(page, 'Read it').click();
    await page.locator('.answer ol li').first().waitFor();
    check((await page.getByText('Tea-time loaf').count()) > 0, 'and it is read');

    await button(page, 'Dark').click();
    await open('/');
    await page.locator('textarea').waitFor({ state: 'attached' });
    check(!(await page.locator('textarea').isVisible()), 'but to one who has begun, the empty table is not shown');
    check((await page.locator('html').getAttribute('data-look')) === 'dark', 'and it is as dark as was chosen');
    letGo();
    await page.locator('.answer ol li').first().waitFor();
    await planned(page);
    check(await page.getByText('What was understood').isVisible(), 'what was begun is shown');

    await open('/day');
    check((await page.locator('textarea').count()) === 0, 'other screens do not begin with the first one');
    letGo();
    await page.getByRole('slider', { name: 'Eat' }).waitFor();
    check(true, 'and come as before');
});
