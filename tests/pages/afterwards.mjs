// SPDX-License-Identifier: Apache-2.0
//
// After the bake: how was it, what was likely behind it, bake it again with the one change; and the shelf, which
// says what suits the day.
import {
    beginBake,
    bring,
    bringBeside,
    button,
    kept,
    noon,
    now,
    planned,
    rolls,
    until,
} from "./baking.mjs";
import { journey } from "./browser.mjs";
import { accessible, fits, picture, pressable } from "./seeing.mjs";

journey(async ({ base, check, person }) => {
    const page = await person({ at: noon, reducedMotion: "reduce" });
    const looked = async (name) => {
        for (const colorScheme of ["dark", "light"]) {
            await page.emulateMedia({ colorScheme });
            await accessible(page, `${name}, ${colorScheme}`, check);
        }
        for (const [width, height] of [
            [1280, 800],
            [768, 1024],
            [360, 740],
        ]) {
            await page.setViewportSize({ width, height });
            await fits(page, `${name}, ${width}`, check);
            await pressable(page, `${name}, ${width}`, 44, check, "main");
            await picture(page, `${name}-${width}`);
        }
    };

    // To the end of a bake, every line on its time
    await bring(page);
    const id = await beginBake(page);
    const finished = page.locator(".over");
    for (
        let lines = 0;
        lines < 12 && !(await finished.isVisible());
        lines += 1
    ) {
        await page.clock.fastForward("30:00");
        const title = await now(page).innerText();
        await page
            .getByRole("button", { name: /^(Done|It’s ready|Begin)$/ })
            .first()
            .click();
        await until(
            async () =>
                (await finished.isVisible()) ||
                (await now(page).innerText()) !== title,
        );
    }
    await finished.waitFor();
    await page.goto(`/bake/${id}/log`);

    // How was it
    const asked = page.getByRole("region", { name: "How was it" });
    await asked.getByRole("button", { name: "close", exact: true }).click();
    await asked.getByText("Something else about it").click();
    await asked
        .getByRole("button", { name: "a burst side", exact: true })
        .click();
    await asked.getByText(/^Most likely: /).waitFor();
    check(true, "what was likely behind it is said");
    await asked.getByText(/^Change one thing: /).waitFor();
    check(
        (await asked.getByText(/^Change one thing: /).count()) === 1,
        "and one thing to change",
    );
    check(
        !/\d ?%|score|points|stars/i.test(await asked.innerText()),
        "without a figure that ranks",
    );
    check(
        await until(
            async () =>
                (await kept(base, id)).events.filter(
                    (event) => event.kind === "told",
                ).length === 2,
        ),
        "both picks are kept",
    );
    await looked("afterwards");

    // What got better
    await page.goto('/progress');
    await page.getByRole('table').first().waitFor();
    check((await page.getByRole('cell', { name: 'close' }).count()) === 1, 'the bake stands among the bakes of its bread');
    await looked('progress');
    await page.goto(`/bake/${id}/log`);
    await asked.getByText(/^Change one thing: /).waitFor();

    // Bake it again
    await button(page, "Bake it again").click();
    await page.waitForURL(`${base}/`);
    await planned(page);

    await page.getByRole("link", { name: "Page", exact: true }).click();
    await page
        .getByText(/this time: /)
        .first()
        .waitFor();
    check(true, "the next page says what to change");

    // What to have out
    await page.goto("/");
    await page.getByRole("link", { name: "What to have out" }).click();
    await page.getByRole("heading", { name: "To weigh" }).waitFor();
    await page.getByRole("heading", { name: /^On 100 g of flour/ }).waitFor();
    check(
        (await page.getByText("strong white flour").count()) >= 2,
        "what to weigh, and the share of each",
    );
    check(
        await page.getByText(/The packet decides/).isVisible(),
        "labels decide about allergens",
    );
    await looked("gather");

    // The shelf
    await page.goto("/");
    await bringBeside(page, rolls);
    await page.goto("/shelf");
    const shelf = page.getByRole("list", { name: /suits best first/ });
    await shelf.getByRole("heading").nth(1).waitFor();
    check(
        (await shelf.getByText(/of your hands in/).count()) >= 2,
        "each kept recipe says how long it takes",
    );
    check(
        (await shelf.getByText(/^For (a first|a second|later)/).count()) >= 2,
        "and for whose bake it is",
    );
    await looked("shelf");
    await shelf
        .getByRole("button", { name: /^Bake this/ })
        .first()
        .click();
    await page.waitForURL(`${base}/`);
    check(
        (await page.locator(".bread").count()) === 1,
        "the one that was chosen is the one to plan",
    );
});
