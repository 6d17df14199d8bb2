// SPDX-License-Identifier: Apache-2.0
import { expect, it } from 'vitest';

import type { Plan, Sheet } from '../src/lib/api';
import { breadsOf } from '../src/lib/breads';
import { plan, sheet } from './double';

it('a plan of one bread is that bread, with its one page', () => {
    const found = breadsOf(plan, [sheet]);
    expect(found).toHaveLength(1);
    expect(found[0]?.sheet).toBe(sheet);
    expect(found[0]?.stages.map((stage) => stage.number)).toEqual([1, 2, 3, 4]);
});

it('with several, each has its own page behind the shared one and numbers of its own', () => {
    const [first, second, third] = plan.stages;
    if (!first || !second || !third) throw new Error('the double has fewer stages');
    const shared: Plan = {
        ...plan,
        breads: ['Rolls', 'Rye'].map((bread) => ({ bread, start: plan.start, eat: plan.eat })),
        stages: [
            { ...first, number: 1, bread: 'Rye' },
            { ...second, number: 2, bread: 'Rolls' },
            { ...third, number: 3, bread: 'Rye' },
        ],
    };
    const pages: Sheet[] = ['Rolls and Rye', 'Rolls', 'Rye'].map((title) => ({ ...sheet, title }));
    const found = breadsOf(shared, pages);
    expect(found.map((one) => [one.bread, one.name, one.sheet?.title])).toEqual([
        [0, 'Rolls', 'Rolls'],
        [1, 'Rye', 'Rye'],
    ]);
    expect(found[1]?.stages.map((stage) => [stage.number, stage.title])).toEqual([
        [1, first.title],
        [2, third.title],
    ]);
});
