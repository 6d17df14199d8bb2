// SPDX-License-Identifier: Apache-2.0
//
// A recipe comes as a photo, on a phone: chosen, read, its figures looked at beside their clippings, put right, planned.
// Then as a saved web page, and as something that is no recipe at all.
import { button, noon, planned } from './baking.mjs';
import { journey } from './browser.mjs';
import { lookedAt } from './seeing.mjs';

// A page of a book, as a phone sees it: a little aslant, grey, with a shadow on one side.
const printed = `<!doctype html><style>
body { margin: 0; background: #cfccc4; }
main { font: 27px/1.5 "Noto Serif", "DejaVu Serif", serif; color: #2a2620; width: 900px; padding: 70px 60px;
  background: linear-gradient(100deg, #f4f1e6, #e9e5d6 60%, #b9b4a4); transform: rotate(1.5deg); }
h1 { font-size: 42px; }
</style><main><h1>Tea-time loaf</h1>
<p>500 g strong white flour<br>320 g water<br>10 g salt<br>7 g instant yeast</p>
<p>Mix everything and knead for 10 minutes. Leave to rise, covered, for 1 hour until doubled.</p>
<p>Shape the dough and put it in a greased tin. Prove for 45 minutes. Heat the oven to 220 °C.</p>
<p>Bake for 35 minutes until it sounds hollow. Cool on a rack.</p></main>`;

const saved = `<!doctype html><html><head><title>Rolls</title><script type="application/ld+json">${JSON.stringify({
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: 'Milk rolls',
    recipeYield: '8 rolls',
    cookTime: 'PT40M',
    recipeIngredient: ['500 g strong white flour', '300 g milk', '9 g salt', '7 g instant yeast'],
    recipeInstructions: [
        { '@type': 'HowToStep', text: 'Mix everything and knead for 10 minutes. Leave to rise for 1 hour.' },
        { '@type': 'HowToStep', text: 'Shape eight rolls and prove for 40 minutes.' },
        { '@type': 'HowToStep', text: 'Bake at 210 °C for 18 minutes.' },
    ],
})}</script></head><body><nav>Home Shop About</nav><article><h1>Milk rolls</h1><p>My neighbour's.</p></article></body></html>`;

journey(async ({ check, person }) => {
    const camera = await person({ at: noon });
    await camera.setViewportSize({ width: 1020, height: 1200 });
    await camera.setContent(printed);
    const photo = await camera.screenshot({ type: 'jpeg', quality: 60 });

    const page = await person({ at: noon, hasTouch: true, reducedMotion: 'reduce' });
    const choose = (name, mimeType, buffer) =>
        page.locator('input[type=file][multiple]').first().setInputFiles({ name, mimeType, buffer });
    await page.goto('/');
    await button(page, 'Read it').waitFor();
    await choose('page.jpg', 'image/jpeg', photo);
    await page.getByRole('progressbar').waitFor();
    check(true, 'a photo that is being read shows how far it is');
    await page.getByRole('heading', { name: 'What the page says' }).waitFor();
    const words = page.getByLabel('Put right what is wrong');
    const text = await words.inputValue();
    check(/knead for 10 minutes/.test(text) && /320 g water/.test(text), 'its words are there');
    check(await page.getByRole('img', { name: 'Page 1' }).isVisible(), 'and the page to compare them with');
    await lookedAt(page, 'from-picture', check, { inside: 'main' });
    await words.fill(text.replace('35 minutes', '30 minutes'));
    await button(page, 'Go on with this').click();
    await page.getByLabel('Eat at, day').selectOption({ index: 0 });
    await page.locator('.answer ol li').first().waitFor();
    await planned(page);
    check((await page.locator('.answer ol li').count()) >= 5, 'and becomes a plan');
    await page.getByRole('link', { name: 'Recipe', exact: true }).first().click();
    await page.locator('.pair', { hasText: 'Bake for 30' }).getByText('30 min').first().waitFor();
    check(true, 'with what was put right in it');

    // A web page: its own data, no menus; its time against the method's.
    await page.goto('/');
    await button(page, 'Another recipe').click();
    await choose('saved.html', 'text/html', Buffer.from(saved));
    await page.getByText('Milk rolls').first().waitFor();
    await planned(page);
    await page.getByRole('link', { name: 'Recipe', exact: true }).first().click();
    await page.getByText(/the head of the recipe 40 min/).waitFor();
    check((await page.getByText('Shop').count()) === 0, 'a saved page is its recipe, and asks where its times differ');

    // No recipe at all.
    await page.goto('/');
    await button(page, 'Another recipe').click();
    await choose('song.mp3', 'audio/mpeg', Buffer.from('494433030000000000000000ff00ff', 'hex'));
    const said = page.getByRole('status').filter({ hasText: /./ }).first();
    await said.waitFor();
    check(/no text, web page, PDF or photo/.test(await said.innerText()), 'what is no recipe is told so');
});
