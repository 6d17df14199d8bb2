// SPDX-License-Identifier: Apache-2.0
//
// Words shown for what the engine calls by a key.
import type { Attention, Basis, DoingAct, Step, WindowState } from './api';

const kinds: Record<string, string> = {
    prepare: 'get ready',
    weigh: 'weigh',
    mix: 'mix',
    knead: 'knead',
    fold: 'fold',
    knock_back: 'knock back',
    divide: 'divide',
    shape: 'shape',
    finish: 'finish',
    activate: 'wake the yeast',
    soak: 'soak',
    ferment: 'leaven or sponge',
    rise: 'first rise',
    rest: 'rest',
    prove: 'final prove',
    chill: 'chill',
    preheat: 'heat the oven',
    bake: 'bake',
    cook: 'cook',
    cool: 'cool',
    serve: 'eat',
    store: 'keep',
};

const places: Record<string, string> = {
    counter: '',
    warm: 'in a warm spot',
    fridge: 'in the fridge',
    oven: '',
    hob: 'on the hob',
};

export const attentionWords: Record<Attention, string> = {
    hands: 'your hands',
    wait: 'dough alone',
    near: 'stay near',
    none: '',
};

const bases: Record<Basis, string> = {
    stated: 'from the recipe',
    computed: 'for your kitchen',
    assumed: 'our guess',
    learned: 'from your bakes',
    open: 'our guess until you answer',
};

export const windowWords: Record<WindowState, string> = {
    asleep: 'Asleep',
    away: 'Away',
    busy: 'Busy',
};

export function kindWords(step: Step): string {
    return [kinds[step.kind] ?? step.kind, places[step.place] ?? ''].filter(Boolean).join(' ');
}

export function basisWords(basis: Basis): string {
    return bases[basis];
}

export function minutesWords(step: Step): string {
    const minutes = step.minutes;
    if (!minutes) return '';
    const low = length(minutes.low);
    const high = length(minutes.high);
    return low === high ? low : `${low} to ${high}`;
}

export function temperatureWords(step: Step): string {
    const range = step.temperature_c;
    if (!range) return '';
    return range.low === range.high ? `${range.low} °C` : `${range.low} to ${range.high} °C`;
}

function length(minutes: number): string {
    const hours = Math.floor(minutes / 60);
    const rest = Math.round(minutes % 60);
    if (hours === 0) return `${rest} min`;
    return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
}

export function dueFirst(acts: DoingAct[]): DoingAct[] {
    return [...acts].sort((one, other) => Number(other.due) - Number(one.due));
}
