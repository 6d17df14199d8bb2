// SPDX-License-Identifier: Apache-2.0
//
// Somebody who has already begun, at any stage and some time ago; and a tick that came later than the work.
import { beginBake, bring, button, isNow, line, noon, stateOf, until } from './baking.mjs';
import { journey } from './browser.mjs';

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon });
    await bring(page);
    const id = await beginBake(page);
    await page.clock.fastForward('01:30:00');
    const box = page.getByRole('dialog');

    await button(page, 'I’ve already begun').click();
    check(await button(box, 'Go on from there').isDisabled(), 'first one says where one is');
    await box.getByText('First rise').click();
    await box.getByLabel('It began, time').fill('14:30');
    await button(box, 'Go on from there').click();
    await isNow(page, 'First rise');
    check((await line(page, /Weigh/).getAttribute('aria-checked')) === 'true', 'what came before is over');
    const rise = async () => (await line(page, /First rise/).innerText()).replace(/\s+/g, ' ');
    check((await rise()).startsWith('14:30'), `it runs since it really began: ${await rise()}`);
    const now = new Date(await page.evaluate(() => Date.now()));
    const { plan } = await stateOf(base, id, now);
    const shape = plan.stages.find((one) => one.title.startsWith('Shape')).start.slice(11, 16);
    check(
        await until(async () => (await line(page, /Shape/).innerText()).startsWith(shape)) && shape <= '15:45',
        `and what follows is counted from there: ${shape}`,
    );

    await page.clock.fastForward('30:00');
    await button(page, 'It’s ready').click();
    await isNow(page, 'Shape');
    await button(page, 'It was earlier').click();
    await box.getByLabel('When it was, time').fill('15:20');
    await button(box, 'Keep').click();
    check(await until(async () => (await rise()).includes('14:30 to 15:20')), `a tick is moved: ${await rise()}`);
    await isNow(page, 'Shape');
    check(true, 'and the place is kept');
});
