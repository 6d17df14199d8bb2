// SPDX-License-Identifier: Apache-2.0
//
// The network goes in the middle of a bake, the page is loaded again without it, and both catch up afterwards.
import { beginBake, bring, button, isNow, kept, line, noon, until } from './baking.mjs';
import { journey } from './browser.mjs';

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon });
    await bring(page);
    const id = await beginBake(page);
    const other = await person({ at: noon, width: 768, height: 1024 });
    await other.goto(`/bake/${id}`);
    const timePasses = (time) => Promise.all([page, other].map((one) => one.clock.fastForward(time)));
    // From here on the pages are kept by their worker.
    await page.evaluate(() => navigator.serviceWorker.ready);
    await timePasses('31:00');
    await button(page, 'Begin').click();
    await timePasses('25:00');
    await button(page, 'Done').click();
    await isNow(page, 'First rise');

    // Loaded again with a network
    await page.reload();
    await isNow(page, 'First rise');
    check(true, 'a page that is loaded again keeps its place');

    // Off
    const network = page.context();
    await network.setOffline(true);
    await timePasses('01:10:00');
    await button(page, 'It’s ready').click();
    await isNow(page, 'Shape');
    check(true, 'a tick counts at once without a network');
    await page.getByText('No connection.').waitFor();
    check(/one tick waits/.test(await page.locator('main').innerText()), 'the page says that it waits to be sent');
    await button(page, 'Note').click();
    await page.getByRole('dialog').getByRole('textbox').fill('no network');
    await button(page, 'Keep').click();
    check((await kept(base, id)).events.every((one) => one.kind !== 'note'), 'nothing of it has been told');

    // Loaded again without one
    await page.reload();
    await isNow(page, 'Shape');
    check(true, 'loaded again without a network it still keeps its place');
    await button(page, 'Done').click();
    await isNow(page, 'Prove');
    await button(page, 'Take it back').click();
    await isNow(page, 'Shape');
    check(true, 'and takes back what was never told');
    await button(page, 'Done').click();
    await isNow(page, 'Prove');

    // Meanwhile somebody else does something
    await button(other, 'Something’s happened').click();
    await other.getByRole('button', { name: 'I forgot the salt' }).click();
    await button(other, 'Back to the bake').click();

    // On again
    await network.setOffline(false);
    check(
        await until(async () => (await kept(base, id)).events.some((one) => one.kind === 'note')),
        'as soon as there is a network it is told',
    );
    await isNow(other, 'Prove');
    check(true, 'and the other screen shows it');
    await page.locator('.said', { hasText: 'I forgot the salt' }).waitFor();
    check(true, 'and what the other did meanwhile is here');
    await page.getByText('No connection.').waitFor({ state: 'detached' });
    const { events } = await kept(base, id);
    check(new Set(events.map((one) => one.id)).size === events.length, 'no event was counted twice');
    const done = events.filter((one) => one.kind === 'done').map((one) => one.stage);
    check(done.join() === '1,2,3,3', `they came in their order: lines ${done.join()}`);
    const rows = (of) => of.locator('ol').innerText();
    check(await until(async () => (await rows(page)) === (await rows(other))), 'both show the same lines');
    check((await line(page, /Shape/).getAttribute('aria-checked')) === 'true', 'with what was done ticked');
});
