// SPDX-License-Identifier: Apache-2.0
//
// A phone and a tablet on one bake: what one ticks the other shows, ticks from both merge, a retry counts once.
// How long a tick takes from one screen to the other is told, not judged: scripts/bench-pages does that.
import { beginBake, bring, kept, line, recipe, until } from './baking.mjs';
import { journey } from './browser.mjs';
import { fromTickToTick } from './measuring.mjs';

journey(async ({ base, check, person }) => {
    const phone = await person({});
    await bring(phone, recipe, { later: 1 });
    const id = await beginBake(phone);
    const tablet = await person({ width: 768, height: 1024 });
    await tablet.goto(`/bake/${id}`);
    await tablet.locator('.now').waitFor();
    const ticked = (page, title, is) =>
        until(async () => (await line(page, title).getAttribute('aria-checked')) === String(is));

    await line(phone, /Weigh/).click();
    check(await ticked(tablet, /Weigh/, true), 'what the phone ticks the tablet shows');
    await line(tablet, /First rise/).click();
    check(await ticked(phone, /First rise/, true), 'what the tablet ticks the phone shows');
    await line(phone, /First rise/).click();
    check(await ticked(tablet, /First rise/, false), 'and what one takes back the other has no more');

    // Both at once, as far as two screens can: where the later line comes first, the earlier one is over anyhow.
    const pressed = (page, title) => line(page, title).evaluate((row) => row.click());
    await Promise.all([pressed(phone, /First rise/), pressed(tablet, /Shape/)]);
    for (const page of [phone, tablet]) {
        await ticked(page, /First rise/, true);
        await ticked(page, /Shape/, true);
    }
    const shown = async (page) => (await page.locator('ol').allInnerTexts()).join().replace(/\s+/g, ' ');
    check(
        await until(async () => (await shown(phone)) === (await shown(tablet))),
        'two ticks at one moment merge into the same lines on both',
    );

    // An answer that is lost
    let lost = 0;
    await phone.route('**/events', async (route) => {
        if (lost > 0) return route.continue();
        lost += 1;
        await route.fetch();
        return route.abort();
    });
    await line(phone, /Prove/).click();
    check(await ticked(tablet, /Prove/, true), 'a tick whose answer is lost arrives');
    await until(async () => phone.getByText('No connection').isHidden());
    await phone.waitForTimeout(1500);
    const { events } = await kept(base, id);
    const proved = events.filter((one) => one.kind === 'done' && one.stage === 4);
    check(lost === 1 && proved.length === 1, 'and told again it counts once');
    check(await phone.getByText('tick waits').isHidden(), 'and nothing waits to be sent any more');

    const took = await fromTickToTick(phone, tablet, /Bake/, 9);
    console.log(`from tick to tick: median ${took.median} ms, at most ${took.most} ms of ${took.all.length}`);
    check(took.all.length === 9, 'each of nine ticks more arrives');
});
