// SPDX-License-Identifier: Apache-2.0
//
// Every screen and everything that opens on one, light and dark, on a phone upright and on its side, a tablet and a
// desk: nothing that axe-core objects to, nothing that scrolls sideways, nothing too small for a finger, and on the
// bake nothing too small for a knuckle. LOAFWRIGHT_PICTURES=FOLDER keeps a picture of each to look at.
import { beginBake, bring, bringBeside, button, isNow, noon, planned, rolls } from './baking.mjs';
import { journey } from './browser.mjs';
import { knuckle_px, lookedAt } from './seeing.mjs';

journey(async ({ check, person }) => {
    // A colour on its way to another is neither of the two.
    const still = { at: noon, calls: true, reducedMotion: 'reduce' };
    let page = await person(still);
    const looked = (name, inside, least) => lookedAt(page, name, check, { inside, least });
    const onBake = (name) => looked(name, 'main', knuckle_px);
    const link = (name) => page.getByRole('link', { name, exact: true }).first().click();

    await page.goto('/');
    await button(page, 'Read it').waitFor();
    await looked('start-empty');
    await bring(page);
    await looked('start');
    await link('Recipe');
    await page.locator('.pair .margin').first().waitFor();
    await looked('recipe');
    await link('Day');
    await page.getByRole('slider', { name: 'Eat' }).waitFor();
    await looked('day');
    await page.getByRole('button', { name: /First rise/ }).click();
    await page.getByRole('region', { name: 'Why then' }).waitFor();
    await looked('day-reason');
    await button(page, 'Close').click();
    await button(page, 'Add a time for others').click();
    await button(page, 'It changes through the day').click();
    await planned(page);
    await looked('day-kitchen');
    await button(page, 'The same all day').click();
    await button(page, 'take out').click();
    await button(page, 'Add sleep').click();
    await page.getByLabel('Eat at, time').fill('15:00');
    await page.getByRole('heading', { name: 'What would work' }).waitFor();
    await planned(page);
    await looked('day-cannot-be');
    await button(page, 'take out').click();
    await page.getByLabel('Eat at, time').fill('18:30');
    await planned(page);
    await link('Page');
    await button(page, 'Bake this').waitFor();
    await button(page, 'On the phone').click();
    await looked('page');

    const id = await beginBake(page);
    await onBake('bake-before');
    await page.clock.fastForward('31:00');
    await page.getByRole('alertdialog').waitFor();
    await looked('bake-call', 'dialog', knuckle_px);
    await button(page, 'Seen').click();
    await button(page, 'Begin').waitFor();
    await onBake('bake-begin');
    await button(page, 'Begin').click();
    await button(page, 'Done').waitFor();
    await onBake('bake-hands');
    await button(page, 'Done').click();
    await isNow(page, 'First rise');
    await onBake('bake-wait');

    const opened = async (name, press, close = true) => {
        await press();
        await page.getByRole('dialog').waitFor();
        await looked(name, 'dialog', knuckle_px);
        if (close) await button(page, 'Close').click();
    };
    const tool = (name) => () => button(page, name).click();
    await opened('panel-trouble', tool('Something’s happened'), false);
    await page.getByRole('dialog').getByRole('button', { name: /out/ }).first().click();
    await looked('panel-trouble-until', 'dialog', knuckle_px);
    await button(page, 'Close').click();
    await button(page, 'Something’s happened').click();
    await page.getByRole('dialog').getByRole('button', { name: /salt/ }).first().click();
    await looked('panel-trouble-told', 'dialog', knuckle_px);
    await button(page, 'Back to the bake').click();
    await opened('panel-note', tool('Note'));
    await opened('panel-temperature', tool('Temperature'));
    await opened('panel-begun', tool('I’ve already begun'));
    await button(page, 'Take it back').click();
    await opened('panel-earlier', tool('It was earlier'));

    await page.clock.fastForward('01:10:00');
    await button(page, 'Seen').click();
    await page.getByText('Look at it now', { exact: false }).first().waitFor();
    await button(page, 'On the phone').click();
    await onBake('bake-look');
    await page.context().setOffline(true);
    await button(page, 'Not yet').click();
    await page.getByText('No connection.').waitFor();
    await onBake('bake-offline');
    await page.context().setOffline(false);
    await page.getByText('No connection.').waitFor({ state: 'detached' });
    await page.goto(`/bake/${id}`);
    await page.locator('.now').waitFor();
    const last = page.getByRole('checkbox').last();
    await last.click();
    await page.getByText('What happened').last().waitFor();
    await onBake('bake-finished');
    await page.goto(`/bake/${id}/log`);
    await page.getByText('When it really was').waitFor();
    await looked('log');
    await page.goto('/nowhere/at/all/here');
    await looked('nowhere');

    // Two breads, two people
    await page.context().close();
    page = await person(still);
    await bring(page);
    await bringBeside(page, rolls);
    await looked('two-start');
    await link('Day');
    await page.getByLabel('Who bakes').fill('Ana, Bo');
    await page.getByLabel('Who bakes').blur();
    await planned(page);
    await button(page, 'Add time away').click();
    await planned(page);
    await looked('two-day');
    await button(page, 'take out').click();
    await planned(page);
    await beginBake(page);
    await page.clock.fastForward('01:30:00');
    await page.getByRole('alertdialog').waitFor();
    await looked('two-call', 'dialog', knuckle_px);
    await button(page, 'Seen').click();
    await button(page, 'Begin').first().click();
    await onBake('two-bake');
    await opened('two-begun', tool('I’ve already begun'));
});
