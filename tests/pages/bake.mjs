// SPDX-License-Identifier: Apache-2.0
//
// A bake from the pasted text to the finished log, on a phone, by the page's own clock.
import { beginBake, button, isNow, kept, line, noon, now, planned, stateOf, tickToTheEnd, until } from './baking.mjs';
import { journey } from './browser.mjs';
import { fingerDrags } from './finger.mjs';

// It says neither how long to prove nor how long to bake.
const open = `Tea-time loaf

Mix 400 g strong white flour with 7 g salt, 5 g instant yeast and 260 g water. Knead for 10 minutes. Leave to rise,
covered, for 1 hour until doubled. Shape it and put it in a greased tin. Prove until it springs back slowly. Heat the
oven to 220°C. Bake until it sounds hollow.
`;

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon, hasTouch: true, permissions: ['clipboard-read', 'clipboard-write'] });
    const times = page.locator('.times b');
    const link = (name) => page.getByRole('link', { name, exact: true }).first().click();

    // Paste
    await page.goto('/');
    await page.evaluate((words) => navigator.clipboard.writeText(words), open);
    await page.getByRole('textbox').first().focus();
    await page.keyboard.press('Control+V');
    await page.getByLabel('Eat at, day').selectOption({ index: 0 });
    await page.locator('.answer ol li').first().waitFor();
    await planned(page);
    check((await page.locator('.answer ol li').count()) >= 5, 'a pasted text becomes a plan at once');

    // Answer
    await link('Recipe');
    const question = page.getByRole('region', { name: 'A question' });
    const asked = await question.locator('.ask').innerText();
    check(/how long/i.test(asked), `what the text leaves open is asked: ${asked}`);
    await question.getByRole('textbox').fill('35 minutes');
    await button(question, 'Answer').click();
    const said = page.getByRole('region', { name: 'What you said' });
    await said.getByText('35 minutes').waitFor();
    // What was said stands there at once; what is asked comes with the next reading.
    const silent = until(async () => await question.getByText(asked).isHidden());
    check(await silent, 'an answered question is not asked again');

    // Correct by tapping
    const row = page.locator('.pair', { hasText: 'Prove until' }).locator('.margin');
    await row.getByRole('button', { name: /final prove/ }).click();
    await row.getByLabel('How long?').fill('50 minutes');
    await button(row, 'Keep').click();
    await row.getByText('50 min').waitFor();
    check(await row.getByText('read first as: final prove').isVisible(), 'a correction is kept beside the original');
    check(
        (await page.getByText('Prove until it springs back slowly').count()) > 0,
        'a correction stands beside the words it corrects',
    );
    await said.getByRole('button', { name: /take it back/ }).first().waitFor();
    check((await said.getByRole('listitem').count()) === 2, 'what was said is listed, to be taken back');
    await button(said, '35 minutes, change it').click();
    await said.getByRole('textbox').fill('40 minutes');
    await button(said, 'Keep').click();
    await page.locator('.pair', { hasText: 'Bake until' }).getByText('40 min').waitFor();
    check(true, 'or changed by tapping it');

    // Type the day, then drag it
    await link('Day');
    await planned(page);
    await page.getByLabel('Eat at, time').fill('19:00');
    await planned(page);
    check((await times.nth(1).innerText()) === '19:00', 'a typed time to eat is the plan’s');
    const eat = page.getByRole('slider', { name: 'Eat' });
    const before = Number(await eat.getAttribute('aria-valuenow'));
    const begin = await times.nth(0).innerText();
    await fingerDrags(page, eat.locator('span'), -30);
    await planned(page);
    const by = Number(await eat.getAttribute('aria-valuenow')) - before;
    check(by < 0 && by >= -45, `a finger moves the time to eat: ${by} minutes`);
    check((await times.nth(0).innerText()) < begin, 'and the plan follows');
    await page.getByLabel('Eat at, time').fill('18:30');
    await planned(page);
    await button(page, 'Add sleep').click();
    await fingerDrags(page, page.getByRole('slider', { name: 'Asleep from' }).first().locator('span'), 30);
    const from = await page.getByLabel('From', { exact: true }).inputValue();
    check(from > '22:30' && from < '23:30', `a finger moves the time to sleep: ${from}`);
    await button(page, 'take out').click();
    await planned(page);

    // Bake
    const id = await beginBake(page);
    check((await now(page).innerText()).startsWith('Begin at'), 'before its time the bake says when it begins');
    const sum = await stateOf(base, id, noon);
    const wait = (Date.parse(sum.plan.start) - noon.getTime()) / 1000;
    await page.clock.fastForward((wait + 30) * 1000);
    await button(page, 'Begin').click();
    await isNow(page, 'Weigh');
    await page.clock.fastForward('25:00');
    await button(page, 'Done').click();
    await isNow(page, 'First rise');

    // Slip
    const shape = line(page, /Shape/);
    await page.clock.fastForward('01:15:00');
    await page.getByText('Look at it now').first().waitFor();
    const planShape = (await shape.innerText()).slice(0, 5);
    await button(page, 'Not yet').click();
    check(
        await until(async () => (await shape.innerText()).slice(0, 5) > planShape),
        `a dough that is not ready moves the rest: from ${planShape} to ${(await shape.innerText()).slice(0, 5)}`,
    );
    await page.getByText('Free until').first().waitFor();
    check(true, 'and says until when one is free');

    // How far has it grown
    const heard = (await kept(base, id)).last;
    await button(page, 'half as much again').click();
    check(await until(async () => (await kept(base, id)).last > heard), 'how far it has grown is told');

    // Something's happened
    await button(page, 'Something’s happened').click();
    const box = page.getByRole('dialog');
    await box.getByRole('button', { name: /have to go out/ }).click();
    const later = new Date(await page.evaluate(() => Date.now() + 90 * 60_000));
    const at = (await stateOf(base, id, later)).plan.eat.likely;
    await box.getByLabel('Until when, time').fill(later.toISOString().slice(11, 16));
    await button(box, 'Move the plan').click();
    await button(box, 'Back to the bake').click();
    await page.locator('.said', { hasText: 'I have to go out' }).waitFor();
    check(true, 'what helps stays in sight');
    const moved = await until(async () => (await shape.innerText()).slice(0, 5) >= later.toISOString().slice(11, 16));
    check(moved, `and the plan moves: ${(await shape.innerText()).slice(0, 5)}`);

    // Undo
    await button(page, 'Take it back').click();
    await page.locator('.said', { hasText: 'I have to go out' }).waitFor({ state: 'detached' });
    check(
        await until(async () => (await stateOf(base, id, later)).plan.eat.likely === at),
        'what was taken back moves nothing any more',
    );

    // To the end
    await button(page, 'Note').click();
    await box.getByRole('textbox').fill('The blue tin <b>leaks</b>.');
    await button(box, 'Keep').click();
    check(await tickToTheEnd(page, '20:00'), 'every line can be ticked to the end');
    await page.getByRole('link', { name: 'What happened' }).last().click();
    await page.getByText('When it really was').waitFor();
    const log = await page.locator('main').innerText();
    check(log.includes('Not yet: First rise'), 'the log tells of the slip');
    check(log.includes('The blue tin <b>leaks</b>.'), 'and of the note, word for word');
    const { events } = await kept(base, id);
    check(new Set(events.map((one) => one.id)).size === events.length, 'no event was counted twice');
});
