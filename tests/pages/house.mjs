// SPDX-License-Identifier: Apache-2.0
//
// A server for the whole house: a desk that opens the address it printed, a phone that scans the desk's code, and a
// stranger. The pages come over plain http, where browsers keep some of their doors shut.
import { networkInterfaces } from 'node:os';

import { beginBake, bring, button, line, recipe, until } from './baking.mjs';
import { journey } from './browser.mjs';
import { accessible, picture } from './seeing.mjs';

if (!Object.values(networkInterfaces()).flat().some((one) => one.family === 'IPv4' && !one.internal)) {
    console.log('skipped: this machine is in no network');
    process.exit(77);
}

journey(
    async ({ base, address, check, person }) => {
        const stranger = await person({});
        const refused = await stranger.request.get(`${base}/api/v1/notebook`);
        check(refused.status() === 401, 'a stranger is not let in');

        const desk = await person({ width: 1280, height: 800 });
        await desk.goto(address);
        check(desk.url() === `${base}/`, 'the printed address lets the desk in and is left behind');
        await bring(desk, recipe, { later: 1 });
        const id = await beginBake(desk);
        await button(desk, 'On the phone').click();
        const code = desk.getByRole('img', { name: /^Code to scan/ });
        check(
            await until(() => code.evaluate((one) => one.complete && one.naturalWidth > 0)),
            'the desk shows a code to scan',
        );
        check(await desk.getByText('Whoever does is let in').isVisible(), 'and says what it gives away');
        await accessible(desk, 'with the code', check);
        await picture(desk, 'house-code-1280');

        // What the code holds; tests/server has that it does.
        const phone = await person({});
        const token = new URL(address).searchParams.get('token');
        await phone.goto(`/enter?token=${token}&to=/bake/${id}`);
        await phone.locator('.now').waitFor();
        check(phone.url() === `${base}/bake/${id}`, 'the phone comes to the same bake');
        check(!(await phone.evaluate(() => isSecureContext)), 'over plain http');
        await phone.getByText('does not keep the screen awake here').waitFor();
        await phone.getByText('gives no notifications').waitFor();
        check(await button(phone, 'Alarms into the calendar').isVisible(), 'what it cannot do it says, and what helps');
        await line(phone, /Weigh/).click();
        check(
            await until(async () => (await line(desk, /Weigh/).getAttribute('aria-checked')) === 'true'),
            'what the phone ticks the desk shows',
        );
    },
    { listen: '0.0.0.0:0' },
);
