// SPDX-License-Identifier: Apache-2.0
//
// A bake from the pasted text to the finished log, in a real browser, on a phone and a tablet.
import { accessible, withServer } from './browser.mjs';

const recipe = `Tea-time loaf

Mix 400 g strong white flour with 7 g salt, 5 g instant yeast and 260 g water. Knead for 10 minutes. Leave to rise,
covered, for 1 hour until doubled. Shape it and put it in a greased tin. Prove for 40 minutes. Heat the oven to 220°C.
Bake for 30 minutes until it sounds hollow.
`;
// Half an hour before the plan begins.
const noon = new Date('2026-11-28T13:30:00Z');
// A call fills the screen until it is seen.
const seen = (page) =>
    page.addLocatorHandler(page.getByRole('alertdialog'), () => page.getByRole('button', { name: 'Seen' }).click());
const now = (page) => page.locator('.now h2');

withServer(async ({ browser, base, check }) => {
    const phone = await browser.newContext({
        viewport: { width: 360, height: 740 },
        timezoneId: 'Europe/London',
        hasTouch: true,
    });
    const page = await phone.newPage();
    const faults = [];
    page.on('pageerror', (fault) => faults.push(String(fault)));
    page.on('console', (message) => {
        if (/Content Security Policy/.test(message.text())) faults.push(message.text());
    });
    await seen(page);
    await page.clock.install({ time: noon });

    // Bring
    await page.goto(`${base}/`);
    await page.locator('textarea').fill(recipe);
    await page.getByRole('button', { name: 'Read it' }).click();
    await page.waitForSelector('ol li');
    await page.getByLabel('Eat at, day').selectOption({ index: 0 });
    await page.waitForTimeout(600);
    check((await page.locator('ol li').count()) >= 5, 'a pasted text becomes a plan at once');
    await accessible(page, 'start, 360', check);
    for (const name of ['Recipe', 'Day', 'Page']) {
        await page.getByRole('link', { name, exact: true }).click();
        await page.waitForTimeout(500);
        await accessible(page, `${name}, 360`, check);
    }

    // Bake, by the page's own clock
    await page.getByRole('button', { name: 'Bake this' }).click();
    await page.waitForURL(/\/bake\//);
    await page.clock.fastForward('31:00');
    await page.waitForSelector('.now');
    await accessible(page, 'bake, 360', check);
    const address = page.url();
    const tablet = await browser.newContext({ viewport: { width: 768, height: 1024 }, colorScheme: 'dark' });
    const second = await tablet.newPage();
    await seen(second);
    await second.clock.install({ time: noon });
    await second.goto(address);
    await second.clock.fastForward('31:00');
    await second.waitForSelector('.now');
    await accessible(second, 'bake, 768, dark', check);

    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await second.getByRole('button', { name: 'Done', exact: true }).waitFor();
    check(true, 'what the phone begins the tablet shows');
    await page.clock.fastForward('30:00');
    await second.clock.fastForward('30:00');
    await second.getByRole('button', { name: 'Done', exact: true }).click();
    await page.waitForFunction(() => document.querySelector('.now h2').textContent.startsWith('First rise'));
    check(true, 'what the tablet ticks the phone shows');

    // Undo by keyboard alone
    await page.getByRole('button', { name: 'Take it back' }).first().focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => !document.querySelector('.now h2').textContent.startsWith('First rise'));
    check(true, 'a tick is taken back by keyboard');
    await page.getByRole('button', { name: 'Done', exact: true }).first().click();
    await page.waitForFunction(() => document.querySelector('.now h2').textContent.startsWith('First rise'));

    // A slow dough moves the rest
    const eatBefore = await plannedMeal(base, address);
    await page.clock.fastForward('01:10:00');
    await page.getByRole('button', { name: 'Not yet' }).first().click();
    await page.waitForTimeout(600);
    check((await plannedMeal(base, address)) >= eatBefore, 'a dough that is not ready moves the rest');

    // Without a network, and reloaded in the middle
    await phone.setOffline(true);
    await page.getByRole('button', { name: 'It’s ready' }).first().click();
    await page.waitForFunction(() => document.querySelector('.now h2').textContent.startsWith('Shape'));
    check(true, 'a tick counts at once without a network');
    await phone.setOffline(false);
    await second.waitForFunction(() => document.querySelector('.now h2').textContent.startsWith('Shape'), null, {
        timeout: 20000,
    });
    check(true, 'and is told as soon as there is one');
    await page.reload();
    await page.waitForSelector('.now');
    check((await now(page).innerText()).startsWith('Shape'), 'a page that is loaded again keeps its place');

    // To the end
    for (let line = 0; line < 12 && (await page.locator('.now').count()) > 0; line += 1) {
        const tick = page
            .getByRole('button', { name: /^(Done|It’s ready|It’s in|Out|Begin)$/ })
            .first();
        if ((await tick.count()) === 0) break;
        await page.clock.fastForward('20:00');
        await tick.click();
        await page.waitForTimeout(400);
    }
    const id = address.split('/').at(-1);
    const state = await (await fetch(`${base}/api/v1/bakes/${id}/state?now=2026-11-28T23:00:00Z`)).json();
    check(state.moment.finished === true, 'every line can be ticked to the end');
    await page.getByRole('link', { name: 'What happened' }).first().click();
    await page.waitForTimeout(500);
    await accessible(page, 'what happened, 360', check);
    const kept = await (await fetch(`${base}/api/v1/bakes/${id}`)).json();
    check(
        new Set(kept.events.map((one) => one.id)).size === kept.events.length,
        'no event was counted twice',
    );
    check(faults.length === 0, `no fault in the page${faults.length ? `: ${faults.join(' | ')}` : ''}`);
});

async function plannedMeal(base, address) {
    const id = address.split('/').at(-1);
    const state = await (await fetch(`${base}/api/v1/bakes/${id}/state?now=2026-11-28T15:45:00Z`)).json();
    return state.plan.eat.likely;
}
