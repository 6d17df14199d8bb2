// SPDX-License-Identifier: Apache-2.0
//
// What a screen reader is given: roles and names as the browser's accessibility tree has them, what is announced,
// and that the clock going on is not.
import { beginBake, bring, button, isNow, line, noon, planned } from './baking.mjs';
import { journey } from './browser.mjs';

journey(async ({ check, person }) => {
    const page = await person({ at: noon });
    const tree = (what = 'body') => page.locator(what).ariaSnapshot();
    // Each line of the tree wanted, in this order, with whatever else between them.
    const holds = async (name, wanted, what) => {
        const lines = (await tree(what)).split('\n').map((one) => one.trim());
        let at = -1;
        const missing = wanted.find((one) => {
            at = lines.findIndex((text, index) => index > at && (one.test?.(text) ?? text === `- ${one}`));
            return at < 0;
        });
        check(!missing, `${name}: the tree is as it is meant${missing ? `, but for ${missing} in\n${lines.join('\n')}` : ''}`);
    };

    await bring(page);
    await holds('start', [
        'link "To the content":',
        'banner:',
        'link "Loafwright":',
        'navigation "Screens":',
        'main:',
        'heading "What do you bake, and when do you eat?" [level=1]',
        'heading "Recipe" [level=2]',
        'button "Put away Tea-time loaf"',
        'group "When":',
        'button "Eat at" [pressed]',
        /^- combobox "Eat at, day":/,
        /^- textbox "Eat at, time"/,
        'spinbutton "How warm the kitchen is"',
        'group "Which oven":',
        'region "The plan":',
        'contentinfo:',
    ]);
    await page.getByRole('link', { name: 'Recipe', exact: true }).click();
    await page.locator('.pair .margin').first().waitFor();
    await holds('recipe', ['heading "Tea-time loaf" [level=1]', /^- paragraph: .*Leave to rise/, /first rise/]);
    await page.getByRole('link', { name: 'Day', exact: true }).click();
    await planned(page);
    await holds('day', [
        'heading "The day" [level=1]',
        'status:',
        'button "14:00 Weigh, mix and knead"',
        /^- slider "Begin"/,
        /^- slider "Eat"/,
        'slider "How warm the kitchen is, °C": "20"',
        'heading "Asleep, away, busy" [level=2]',
    ]);
    const eat = page.getByRole('slider', { name: 'Eat' });
    check(
        (await eat.getAttribute('aria-valuetext')) === 'Sat 28 Nov, 18:30',
        'a time that is dragged is read as a day and a time',
    );
    await page.getByRole('link', { name: 'Page', exact: true }).click();
    await button(page, 'Bake this').waitFor();
    await holds('page', [
        'article:',
        'heading "Tea-time loaf" [level=2]',
        'complementary "Bake it, or take it along":',
        'button "Bake this"',
        'button "A4" [pressed]',
        'checkbox "Large print"',
    ]);

    await beginBake(page);
    await page.clock.fastForward('31:00');
    await button(page, 'Begin').click();
    await isNow(page, 'Weigh');
    await page.clock.fastForward('25:00');
    await button(page, 'Done').click();
    await isNow(page, 'First rise');
    await holds('bake', [
        'heading "Tea-time loaf" [level=1]',
        'region "First rise, covered":',
        'heading "First rise, covered" [level=2]',
        /^- timer "in (1 hour|\d+ minutes)/,
        'button "It’s ready"',
        'button "Not yet"',
        'region "Next":',
        'group "How far has it grown?":',
        'button "Take it back"',
        'region "Tea-time loaf":',
        /^- checkbox "14:\d\d to 14:\d\d Weigh, mix and knead done" \[checked\]/,
        /^- checkbox "14:\d\d First rise, covered"/,
        'region "How it calls you":',
        'button "Sound" [pressed]',
        'button "Listen to me"',
    ]);
    check((await page.locator('[aria-current=step]').count()) === 1, 'the line that is being done is marked');
    check((await page.locator('[aria-live=assertive], [role=alert]').count()) === 0, 'nothing interrupts');
    check((await page.title()).startsWith('First rise'), 'the title of the page says what is done now');

    // A minute of clock changes the timer, and says nothing
    const polite = page.locator('[aria-live=polite]').first();
    const before = await polite.innerText();
    await page.evaluate(() => {
        globalThis.said = 0;
        const watch = new MutationObserver((changes) => (globalThis.said += changes.length));
        for (const region of document.querySelectorAll('[aria-live=polite], [role=status]')) {
            watch.observe(region, { childList: true, characterData: true, subtree: true });
        }
    });
    const left = await page.getByRole('timer').getAttribute('aria-label');
    for (let turn = 0; turn < 12; turn += 1) await page.clock.runFor(5000);
    await page.waitForFunction(
        (was) => document.querySelector('[role=timer]').getAttribute('aria-label') !== was,
        left,
    );
    check((await page.evaluate(() => globalThis.said)) === 0, 'a clock that goes on is not announced');

    // What matters is
    check(before !== '', `the new line was announced: ${before}`);
    await page.clock.fastForward('01:10:00');
    await page.waitForFunction(() => globalThis.said > 0);
    check(/rise|Look/i.test(await polite.innerText()), `a time that has come is announced: ${await polite.innerText()}`);
    await button(page, 'It’s ready').click();
    await isNow(page, 'Shape');
    check(/Shape/.test(await polite.innerText()), `and what follows: ${await polite.innerText()}`);
    check(
        (await line(page, /First rise/).getAttribute('aria-checked')) === 'true',
        'and the row says that it is done',
    );
});
