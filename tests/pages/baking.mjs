// SPDX-License-Identifier: Apache-2.0
//
// What every journey does: bring a recipe, begin its bake, ask the server what it keeps.
export const recipe = `Tea-time loaf

Mix 400 g strong white flour with 7 g salt, 5 g instant yeast and 260 g water. Knead for 10 minutes. Leave to rise,
covered, for 1 hour until doubled. Shape it and put it in a greased tin. Prove for 40 minutes. Heat the oven to 220°C.
Bake for 30 minutes until it sounds hollow.
`;
export const rolls = `Seeded rolls

- 250 g strong white flour
- 5 g salt
- 4 g instant yeast
- 165 g water

1. Mix everything and knead for 8 minutes.
2. Let it rise for 50 minutes, covered.
3. Divide into six and shape. Prove for 30 minutes.
4. Bake at 220°C for 15 minutes.
`;
// Half an hour before the plan for half past six begins.
export const noon = new Date('2026-11-28T13:30:00Z');

export const now = (page) => page.locator('.now h2');
export const button = (page, name) => page.getByRole('button', { name, exact: true });

// A line of the bake, by the beginning of its title.
export const line = (page, title) => page.getByRole('checkbox', { name: title });

/// On the first screen afterwards, with a plan for half past six: of the day that the page's clock shows, or of one
/// that is `later`. A page with the machine's own clock asks for a later one, since today may be too far gone.
export async function bring(page, text = recipe, { later = 0 } = {}) {
    await page.goto('/');
    await page.getByRole('textbox').first().fill(text);
    await button(page, 'Read it').click();
    await page.getByLabel('Eat at, day').selectOption({ index: later });
    await page.locator('.answer ol li').first().waitFor();
    await planned(page);
}

/// One more bread beside what is there.
export async function bringBeside(page, text) {
    await button(page, 'One more beside it').click();
    await page.getByRole('textbox').first().fill(text);
    await button(page, 'Read it').click();
    await page.getByText('Seeded rolls').first().waitFor();
    await planned(page);
}

/// When the plan on the screen is that of the last change.
export const planned = (page) => page.waitForFunction(() => !document.querySelector('[aria-busy=true]'));

/// On the bake afterwards. Gives its id.
export async function beginBake(page) {
    await page.getByRole('link', { name: 'Page', exact: true }).click();
    await button(page, 'Bake this').click();
    await page.waitForURL(/\/bake\//);
    await page.locator('.now').waitFor();
    return page.url().split('/').at(-1);
}

/// When the screen says that this is to be done now.
export const isNow = (page, title) =>
    page.waitForFunction(
        (begins) => document.querySelector('.now h2')?.textContent.startsWith(begins),
        title,
    );

/// What the server says of a bake, at a time of its day.
export async function kept(base, id) {
    return (await fetch(`${base}/api/v1/bakes/${id}`)).json();
}
export async function stateOf(base, id, at) {
    return (await fetch(`${base}/api/v1/bakes/${id}/state?now=${at.toISOString().slice(0, 19)}Z`)).json();
}

/// Asks until it holds, for at most ten seconds.
export async function until(holds) {
    const end = performance.now() + 10_000;
    while (performance.now() < end) {
        if (await holds()) return true;
        await new Promise((resolve) => setTimeout(resolve, 20));
    }
    return false;
}

/// Ticks line after line, each so long after the one before ("20:00"), until the bake is over.
export async function tickToTheEnd(page, apart) {
    const finished = page.locator('.over');
    for (let lines = 0; lines < 12 && !(await finished.isVisible()); lines += 1) {
        await page.clock.fastForward(apart);
        const title = await now(page).innerText();
        await page.getByRole('button', { name: /^(Done|It’s ready|Begin)$/ }).first().click();
        await until(async () => (await finished.isVisible()) || (await now(page).innerText()) !== title);
    }
    return finished.isVisible();
}
