// SPDX-License-Identifier: Apache-2.0
//
// What goes over the wire, version 1. Times in answers are RFC 3339 with the offset of the zone they
// are meant in; times in requests may be local, "2026-11-28T18:30".

import type { components } from './contract';

export interface Diagnostic {
    code: string;
    severity: string;
    what: string;
    where: string;
    do_this: string;
}

export type Band = { low: number; likely: number; high: number };
export type TimeBand = { low: string; likely: string; high: string };
export type Span = [number, number];
export type Basis = 'stated' | 'computed' | 'assumed' | 'learned' | 'open';
export type Attention = 'hands' | 'wait' | 'near' | 'none';

export interface Words {
    text: string;
    span: Span | null;
}

export interface Question {
    key: string;
    about: string;
    ask: string;
    default: string;
    choices?: string[];
}

export interface Answer {
    key: string;
    value: string;
}

export interface Step {
    kind: string;
    place: string;
    text: string;
    part: string | null;
    minutes: (Band & { basis: Basis }) | null;
    temperature_c: { low: number; high: number } | null;
    optional: boolean;
    during: number | null;
    clock: string | null;
    cue: Words | null;
    reminders: Words[];
    span: Span;
    /// Where it was read, for the keys of corrections.
    at: string;
    as_read: Pick<Step, 'kind' | 'place' | 'minutes' | 'temperature_c'> | null;
}

export interface Ingredient {
    text: string;
    item: string;
    grams: Band | null;
    optional: boolean;
    part: string | null;
    span: Span | null;
    at: string;
    as_read: { grams: Band | null } | null;
}

export interface Reading {
    version: number;
    recipe: {
        title: string;
        pieces: number | null;
        ingredients: Ingredient[];
        steps: Step[];
        /// What is other than the text says, because it was wanted so.
        changes: string[];
    };
    unread: { text: string; span: Span; why: string; at: string }[];
    questions: Question[];
    remarks: Diagnostic[];
}

/// What was taken out of a photo, a PDF or a web page.
export type Intake = components['schemas']['Intake'];
export type TakenIn = NonNullable<Intake['taken']>;
export type Clipping = NonNullable<TakenIn['unsure'][number]['clipping']>;

export type Choice = components['schemas']['Choice'];
export type BreadProgress = components['schemas']['BreadProgress'];
export type Provisions = components['schemas']['Provisions'];
export type Formula = components['schemas']['Formula'];

export interface Choices {
    choices: Choice[];
    /// Places of texts that are no recipe.
    left_out: number[];
}

export type Kitchen = components['schemas']['Kitchen'];

/// A kitchen without a thermometer.
export type RoomWord = NonNullable<Kitchen['room']>;

/// From this time of each day on.
export type RoomPeriod = Extract<Kitchen['room_c'], unknown[]>[number];

export type WindowState = 'away' | 'asleep' | 'busy';

/// A bare clock time is every day, one with a date once.
export interface DaySpan {
    from: string;
    to: string;
}

export interface DayWindow extends DaySpan {
    person?: string;
    state: WindowState;
}

export type DayHabits = components['schemas']['Day'];

export interface PageOptions {
    clock?: '24' | '12';
    temperature?: 'c' | 'f';
    weight?: 'g' | 'oz';
    /// Fewer words, for one hand.
    few?: boolean;
}

export type Size = components['schemas']['Size'];
export type Yeast = NonNullable<components['schemas']['Bread']['yeast']>;

/// How a bread is wanted, where that is not as its text has it.
export interface BreadWish {
    size?: Size;
    yeast?: Yeast;
}

export interface Bread extends BreadWish {
    name: string;
    text: string;
    answers: Answer[];
}

export interface BakeRequest {
    version: 1;
    breads: Bread[];
    kitchen?: Kitchen;
    day?: DayHabits;
    start?: string;
    eat_by?: string;
    now?: string;
    page?: PageOptions;
}

export interface Stage {
    number: number;
    bread: string;
    title: string;
    who?: string | null;
    attention: Attention;
    start: string;
    end: TimeBand;
    look_from: string | null;
    cue: Words | null;
    acts: { at: string; text: string; step: number | null }[];
    reminders: Words[];
    steps: number[];
    basis?: Basis | null;
    reason?: string | null;
}

export interface Plan {
    start: string;
    out_of_oven: string;
    cut_from: string;
    best_from: string;
    eat: TimeBand;
    total_minutes: number;
    hands_on_minutes: number;
    stages: Stage[];
    free: { from: string; to: string }[];
    warnings: Diagnostic[];
    cautions: { code: string; text: string; source: string }[];
    /// With several breads: each one's own times.
    breads?: { bread: string; start: string; eat: TimeBand }[];
}

/// A time that stands out, and the words that lead to it.
export interface Said {
    words: string;
    time: string;
}

export interface SheetStage {
    number: number;
    time: string;
    /// On the clock that several breads share, whose line it is.
    bread: string | null;
    title: string;
    length: string | null;
    /// There, too: what else begins with it.
    also: string | null;
    box: boolean;
    acts: { time: string; text: string }[];
    cue: string | null;
    cue_is_ours: boolean;
    reminders: string[];
    normal: string | null;
}

export interface Sheet {
    kind: 'bread' | 'shared_clock';
    title: string;
    eat: Said;
    begin: Said;
    free: string | null;
    weigh: string[];
    ready: string[];
    ahead: string[];
    stages: SheetStage[];
    notes: string[];
    warnings: string[];
    cautions: string[];
    questions: string[];
}

export interface WayOut {
    change: string;
    eat: string;
    /// The answers that make the bread so; none where only the day changes.
    taken_by: { bread: number; key: string; value: string }[];
}

export interface Planned {
    version: number;
    plan: Plan;
    sheets: Sheet[];
    questions: Question[];
}

export interface CannotBe {
    version: number;
    impossible: { why: string; reasons: string[]; ways_out: WayOut[] };
    questions: Question[];
}

export type PlanOutcome = Planned | CannotBe;

export type PageForm = 'pdf' | 'svg' | 'png' | 'ics' | 'txt';

export interface KeptRecipe {
    id: string;
    name: string;
    text: string;
    answers: Answer[];
}

export interface Notebook {
    version: number;
    recipes: KeptRecipe[];
    settings: { kitchen?: Kitchen; day?: DayHabits } | null;
}

export type Growth = 'little' | 'half_as_much' | 'doubled' | 'more';

interface EventBase {
    id: string;
    at: string;
    bread: number;
    stage: number;
}

export type BakeEvent = EventBase &
    (
        | { kind: 'begun' | 'done' }
        | { kind: 'not_ready'; until?: string }
        | { kind: 'taken_back'; undoes: string }
        | { kind: 'act_done'; act: number }
        | { kind: 'grown'; how: Growth }
        | { kind: 'note'; text: string }
        | { kind: 'photo'; photo: string }
        | { kind: 'temperature'; of: 'dough' | 'room' | 'oven' | 'loaf'; c: number }
        | { kind: 'trouble'; what: string; until?: string }
        | {
              kind: 'told';
              crust?: 'pale' | 'right' | 'dark';
              crumb?: 'close' | 'even' | 'open';
              again?: boolean;
              symptoms?: string[];
              changed?: string[];
          }
    );

/// One change for the next bake, at one stage (a kind of step, or "leaven").
export interface TryNext {
    change: string;
    because: string;
    stage: string;
}

export interface Findings {
    seen: string[];
    say: string[];
    try_next: TryNext | null;
}

export interface DoingAct {
    act: number;
    at: string;
    text: string;
    done: boolean;
    due: boolean;
}

export interface Doing {
    bread: number;
    bread_name: string;
    stage: number;
    title: string;
    attention: Attention;
    state: 'to_begin' | 'running' | 'look' | 'late';
    begun: string | null;
    end: TimeBand;
    look_from: string | null;
    free_until: string | null;
    cue: string | null;
    cue_is_ours: boolean;
    reminders: string[];
    acts: DoingAct[];
    grows: boolean;
}

export interface Next {
    bread: number;
    bread_name: string;
    stage: number;
    title: string;
    at: string;
    attention: Attention;
}

export interface Alarm {
    at: string;
    text: string;
    bread: number;
    stage: number;
    kind: 'hands' | 'look' | 'act' | 'ready';
}

export interface Line {
    bread: number;
    stage: number;
    begun: string | null;
    done: string | null;
    acts_done: number[];
}

export interface Remedy {
    id: string;
    at: string;
    what: string;
    remedy: string;
    until: string | null;
}

export interface Moment {
    now: string;
    finished: boolean;
    free_until: string | null;
    say: string;
    doing: Doing[];
    next: Next[];
    alarms: Alarm[];
    lines: Line[];
    eat: TimeBand;
    remedies: Remedy[];
}

export interface BakeState {
    version: number;
    plan: Plan;
    sheets: Sheet[];
    moment: Moment;
    change: string;
    last: number;
}

export interface BakeEntry {
    id: string;
    title: string;
    begun: string;
    last: number;
}

export interface Bake {
    id: string;
    request: BakeRequest;
    events: BakeEvent[];
    last: number;
}

export interface Trouble {
    key: string;
    tells: string;
    remedy: string;
    asks_until: boolean;
    source: string;
}
