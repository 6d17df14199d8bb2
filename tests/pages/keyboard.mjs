// SPDX-License-Identifier: Apache-2.0
//
// The whole way without a mouse or a finger: keys alone, from the empty page to the finished log.
import { isNow, kept, noon, planned, recipe, until } from './baking.mjs';
import { journey } from './browser.mjs';

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon, calls: true, width: 1280, height: 800 });
    const unseen = [];

    // What has the focus, by role and name, as a reader has it.
    const focused = () =>
        page.evaluate(() => {
            const one = document.activeElement;
            if (one === document.body) return { words: '', seen: true };
            const style = getComputedStyle(one);
            const drawn = (element) => element && getComputedStyle(element).outlineStyle !== 'none';
            return {
                words: (one.getAttribute('aria-label') ?? one.labels?.[0]?.textContent ?? one.textContent ?? '')
                    .replace(/\s+/g, ' ')
                    .trim(),
                seen: style.outlineStyle !== 'none' || drawn(one.closest('label')),
            };
        });
    // Goes on with Tab until that is what has the focus.
    const tabTo = async (name, key = 'Tab') => {
        for (let presses = 0; presses < 120; presses += 1) {
            await page.keyboard.press(key);
            const { words, seen } = await focused();
            if (!seen && words !== '') unseen.push(words.slice(0, 30));
            if (typeof name === 'string' ? words === name : name.test(words)) return;
        }
        throw new Error(`Tab never comes to ${name}`);
    };
    const press = async (name, key = 'Enter') => {
        await tabTo(name);
        await page.keyboard.press(key);
    };

    await page.goto('/');
    await page.keyboard.press('Tab');
    check((await focused()).words === 'To the content', 'the first key leads past the head of the page');
    await tabTo(/^Paste the recipe/);
    await page.keyboard.insertText(recipe);
    await press('Read it');
    await tabTo('Eat at, day');
    await page.keyboard.press('Home');
    await page.locator('.answer ol li').first().waitFor();
    await planned(page);
    check((await page.locator('.answer .times').innerText()).includes('18:30'), 'a recipe is brought, a day chosen');

    await press('Move the day about');
    await page.getByRole('slider', { name: 'Eat' }).waitFor();
    check(
        await page.evaluate(() => document.activeElement.tagName === 'H1'),
        'a new screen is read from its heading on',
    );
    await tabTo('Eat');
    await page.keyboard.press('PageDown');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await planned(page);
    const eat = page.locator('.times b').nth(1);
    check((await eat.innerText()) === '19:20', `keys move the time to eat: ${await eat.innerText()}`);
    await tabTo(/First rise/, 'Shift+Tab');
    await page.keyboard.press('Space');
    await page.getByRole('region', { name: 'Why then' }).waitFor();
    await press('Close');
    await press('The page');
    await press('Bake this');
    await page.waitForURL(/\/bake\//);
    const id = page.url().split('/').at(-1);
    await page.locator('.now').waitFor();

    // A call, and back to where one was
    await page.clock.fastForward('01:30:00');
    await page.getByRole('alertdialog').waitFor();
    check((await focused()).words === 'Seen', 'a call has the focus');
    await page.keyboard.press('Enter');
    await page.getByRole('alertdialog').waitFor({ state: 'detached' });
    await press('Begin');
    await isNow(page, 'Weigh');
    await until(async () => (await focused()).words.startsWith('Weigh'));
    check((await focused()).words.startsWith('Weigh'), 'after a tick one goes on from the new line');
    await press('Done');
    await isNow(page, 'First rise');

    await tabTo('Something’s happened');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    check((await focused()).words === 'Something’s happened', 'Escape closes a question, and the focus is back');
    await page.keyboard.press('Enter');
    await press('The dough is too sticky');
    await press('Back to the bake');
    await page.locator('.said', { hasText: 'too sticky' }).waitFor();
    check(true, 'what has happened is told');
    await tabTo('Take it back', 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.locator('.said', { hasText: 'too sticky' }).waitFor({ state: 'detached' });
    check(true, 'and taken back');
    await press(/^\d\d:\d\d First rise/, 'Space');
    await isNow(page, 'Shape');
    check(true, 'a row is ticked with the space bar');
    await press(/Out of the tin/, 'Space');
    await page.locator('.over').waitFor();
    await press('What happened');
    await page.getByText('When it really was').waitFor();
    check((await kept(base, id)).events.some((one) => one.kind === 'trouble'), 'the log is there at the end');
    check(unseen.length === 0, `the focus is always to be seen${unseen.length ? `, but not on ${unseen.join('; ')}` : ''}`);
});
