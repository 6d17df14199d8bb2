// SPDX-License-Identifier: Apache-2.0
//
// One plan, several breads. A plan of one has one page; a plan of several has the clock they share,
// then a page each, and its stages are numbered along the shared clock. Events and moments name a
// line by its number on the bread's own page, so that is the number given here.
import type { Plan, Sheet, Stage } from './api';

export interface BreadOfPlan {
    bread: number;
    name: string;
    stages: Stage[];
    /// Its own page.
    sheet: Sheet | undefined;
}

export function breadsOf(plan: Plan, sheets: Sheet[]): BreadOfPlan[] {
    if (!plan.breads || plan.breads.length === 0) {
        return [{ bread: 0, name: sheets[0]?.title ?? '', stages: plan.stages, sheet: sheets[0] }];
    }
    const shared = sheets.length > plan.breads.length ? 1 : 0;
    return plan.breads.map((one, bread) => ({
        bread,
        name: one.bread,
        stages: plan.stages
            .filter((stage) => stage.bread === one.bread)
            .map((stage, index) => ({ ...stage, number: index + 1 })),
        sheet: sheets[bread + shared],
    }));
}
