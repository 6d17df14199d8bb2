// SPDX-License-Identifier: Apache-2.0
//
// After the bake: how was it, what was likely behind it, bake it again with the one change; what got better, what
// to have out, and the shelf, which says what suits the day. Last, another size and another yeast.
import { beginBake, bring, bringBeside, button, kept, noon, planned, rolls, tickToTheEnd, until } from './baking.mjs';
import { journey } from './browser.mjs';
import { lookedAt } from './seeing.mjs';

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon, reducedMotion: 'reduce' });
    const looked = (name) => lookedAt(page, name, check);

    // Every line on its time
    await bring(page);
    const id = await beginBake(page);
    check(await tickToTheEnd(page, '30:00'), 'a bake is over');
    await page.goto(`/bake/${id}/log`);

    // How was it
    const asked = page.getByRole('region', { name: 'How was it' });
    await asked.getByRole('button', { name: 'close', exact: true }).click();
    await asked.getByText('Something else about it').click();
    await asked.getByRole('button', { name: 'a burst side', exact: true }).click();
    await asked.getByText(/^Most likely: /).waitFor();
    await asked.getByText(/^Change one thing: /).first().waitFor();
    check((await asked.getByText(/^Change one thing: /).count()) === 1, 'one thing to change is said, and what was likely');
    check(!/\d ?%|score|points|stars/i.test(await asked.innerText()), 'without a figure that ranks');
    check(
        await until(async () => (await kept(base, id)).events.filter((event) => event.kind === 'told').length === 2),
        'both picks are kept',
    );
    for (const change of ['warmer water', 'a longer prove']) {
        await asked.getByLabel('Done otherwise than last time').fill(change);
        await button(asked, 'Add it').click();
        await asked.getByText(change, { exact: true }).waitFor();
    }
    await asked.getByText(/can't tell which of them/).waitFor();
    check(true, 'of two changes at once it says that the bake cannot tell which helped');
    await looked('afterwards');

    // What got better
    await page.goto('/progress');
    await page.getByRole('table').first().waitFor();
    check((await page.getByRole('cell', { name: 'close' }).count()) === 1, 'the bake stands among the bakes of its bread');
    await looked('progress');

    // Bake it again
    await page.goto(`/bake/${id}/log`);
    await asked.getByText(/^Change one thing: /).waitFor();
    await button(page, 'Bake it again').click();
    await page.waitForURL(`${base}/`);
    await planned(page);
    await page.getByRole('link', { name: 'Page', exact: true }).click();
    await page.locator('main li').first().waitFor();
    check(await until(async () => /this time: /.test(await page.locator('main').innerText())), 'the next page says what to change');

    // What to have out
    await page.goto('/');
    await page.getByRole('link', { name: 'What to have out' }).click();
    await page.getByRole('heading', { name: 'To weigh' }).waitFor();
    await page.getByRole('heading', { name: /^On 100 g of flour/ }).waitFor();
    check((await page.getByText('strong white flour').count()) >= 2, 'what to weigh, and the share of each');
    check(await page.getByText(/The packet decides/).isVisible(), 'labels decide about allergens');
    await looked('gather');

    // The shelf
    await page.goto('/');
    await bringBeside(page, rolls);
    await page.goto('/shelf');
    const shelf = page.getByRole('list', { name: /suits best first/ });
    await shelf.getByRole('heading').nth(1).waitFor();
    check((await shelf.getByText(/of your hands in/).count()) >= 2, 'each kept recipe says how long it takes');
    check((await shelf.getByText(/^For (a first|a second|later)/).count()) >= 2, 'and for whose bake it is');
    await looked('shelf');
    await shelf.getByRole('button', { name: /^Bake this/ }).first().click();
    await page.waitForURL(`${base}/`);
    check((await page.locator('.bread').count()) === 1, 'the one that was chosen is the one to plan');

    // Make it larger, with leaven
    await page.goto('/recipe/0');
    const make = page.getByRole('region', { name: 'Make it' });
    check((await make.locator('input, select').count()) === 2, 'two things to say, and a third once a size is wanted');
    await make.getByLabel('Size').selectOption({ label: 'so many times' });
    await make.getByLabel('How many times').fill('2');
    await make.getByLabel('How many times').press('Tab');
    await make.getByText('2 times the recipe.').waitFor();
    await make.getByLabel('Raised by').selectOption({ label: 'leaven' });
    await make.getByText(/^With leaven instead of yeast: the evening before/).waitFor();
    check((await make.getByText(/ripe starter, for the leaven/).count()) === 1, 'its amounts are said');
    await looked('make-it');
    await page.getByRole('link', { name: 'Page', exact: true }).click();
    await page.locator('main li').first().waitFor();
    check(
        await until(async () => /2 times the recipe\.[^]*With leaven instead of yeast/.test(await page.locator('main').innerText())),
        'the page is for that size, with its leaven',
    );
    await page.goto('/recipe/0');
    check((await make.getByLabel('How many times').inputValue()) === '2', 'and remembers what was wanted');
    await make.getByLabel('Size').selectOption({ label: 'as it is written' });
    await make.getByLabel('Raised by').selectOption({ label: 'what the recipe says' });
    await make.getByText('2 times the recipe.').waitFor({ state: 'hidden' });
});
