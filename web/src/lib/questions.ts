// SPDX-License-Identifier: Apache-2.0
//
// Which open question a step or an amount hangs on, so that tapping it asks that one. What no
// question is about cannot be corrected, and gets no button.
import type { Ingredient, Question, Reading, Step } from './api';

function keyPart(item: string): string {
    return item
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-|-$/g, '');
}

export function stepQuestion(step: Step, reading: Reading): Question | null {
    const named = reading.questions.find((question) =>
        step.minutes && step.minutes.basis !== 'open'
            ? false
            : question.key === `minutes-${step.kind}` ||
              question.key.startsWith(`minutes-${step.kind}-`),
    );
    if (named) return named;
    if ((step.kind === 'bake' || step.kind === 'preheat') && !step.temperature_c) {
        return reading.questions.find((question) => question.key === 'oven-c') ?? null;
    }
    return null;
}

export function ingredientQuestion(ingredient: Ingredient, reading: Reading): Question | null {
    const part = keyPart(ingredient.item);
    return (
        reading.questions.find((question) => question.key === `amount-${part}`) ??
        (ingredient.grams
            ? null
            : (reading.questions.find(
                  (question) =>
                      question.key.startsWith('grams-') &&
                      part.includes(question.key.slice('grams-'.length)),
              ) ?? null))
    );
}
