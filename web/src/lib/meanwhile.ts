// SPDX-License-Identifier: Apache-2.0
//
// What a bake looks like between two answers of the server: the last answer, with what was ticked
// since laid over it and the clock moved on. Nothing is worked out anew here: a stage that begins
// early or late keeps the times of the plan until the server has planned the rest again.
import type { BakeEvent, BakeState, Doing, Line, Moment, Next, Stage } from './api';
import { breadsOf, type BreadOfPlan } from './breads';
import { clock, instant, type ClockStyle } from './times';

interface Place {
    bread: number;
    stage: number;
}
const same = (one: Place, other: Place): boolean =>
    one.bread === other.bread && one.stage === other.stage;

function breadOf(state: BakeState, bread: number): BreadOfPlan | undefined {
    return breadsOf(state.plan, state.sheets).find((one) => one.bread === bread);
}

/// The lines of one bread's own page, in order.
export function stagesOf(state: BakeState, bread: number): Stage[] {
    return breadOf(state, bread)?.stages ?? [];
}

// What asks first in a wait: an act, or the look.
function firstOf(stage: Stage): string | null {
    const asks = [
        ...stage.acts.map((act) => act.at),
        ...(stage.look_from ? [stage.look_from] : []),
    ];
    return asks.sort((one, other) => instant(one) - instant(other))[0] ?? null;
}

function doingOf(state: BakeState, place: Place, begun: string): Doing | null {
    const own = breadOf(state, place.bread);
    const stage = own?.stages.find((one) => one.number === place.stage);
    if (!own || !stage || stage.attention === 'none') return null;
    const sheet = own.sheet?.stages.find((one) => one.number === place.stage);
    return {
        bread: place.bread,
        bread_name: stage.bread,
        stage: place.stage,
        title: stage.title,
        attention: stage.attention,
        state: 'running',
        begun,
        end: stage.end,
        look_from: stage.look_from,
        free_until: stage.attention === 'wait' ? firstOf(stage) : null,
        cue: sheet?.cue ?? stage.cue?.text ?? null,
        cue_is_ours: sheet?.cue_is_ours ?? false,
        reminders: sheet?.reminders ?? stage.reminders.map((one) => one.text),
        acts: stage.acts.map((act, index) => ({
            act: index,
            at: act.at,
            text: act.text,
            done: false,
            due: false,
        })),
        grows: false,
    };
}

function lineOf(lines: Line[], place: Place): Line {
    const found = lines.find((line) => same(line, place));
    if (found) return found;
    const made: Line = { ...place, begun: null, done: null, acts_done: [] };
    lines.push(made);
    return made;
}

function begin(state: BakeState, moment: Moment, place: Place, at: string): void {
    moment.doing = moment.doing.filter((one) => one.bread !== place.bread);
    moment.next = moment.next.filter((one) => !same(one, place));
    moment.alarms = moment.alarms.filter(
        (one) => one.bread !== place.bread || one.stage >= place.stage,
    );
    const doing = doingOf(state, place, at);
    if (doing) {
        moment.doing.push(doing);
        lineOf(moment.lines, place).begun ??= at;
    }
    const stages = stagesOf(state, place.bread);
    const ahead = stages.find((one) => one.number > place.stage);
    if (ahead && !moment.next.some((one) => one.bread === place.bread)) {
        moment.next.push(nextOf(ahead, place.bread));
    }
    moment.finished = moment.doing.length === 0 && !stages.some((one) => boxed(one, moment, place));
}

function boxed(stage: Stage, moment: Moment, place: Place): boolean {
    if (stage.attention === 'none') return false;
    const line = moment.lines.find((one) => same(one, { ...place, stage: stage.number }));
    return !line?.done;
}

function nextOf(stage: Stage, bread: number): Next {
    return {
        bread,
        bread_name: stage.bread,
        stage: stage.number,
        title: stage.title,
        at: stage.start,
        attention: stage.attention,
    };
}

const later = (time: string, other: string | undefined): string =>
    other && instant(other) > instant(time) ? other : time;

function lay(state: BakeState, moment: Moment, event: BakeEvent): void {
    const place = { bread: event.bread, stage: event.stage };
    const doing = moment.doing.find((one) => same(one, place));
    switch (event.kind) {
        case 'begun':
            for (const stage of stagesOf(state, place.bread)) {
                if (stage.number >= place.stage) break;
                lineOf(moment.lines, { ...place, stage: stage.number }).done ??= event.at;
            }
            begin(state, moment, place, event.at);
            break;
        case 'done': {
            lineOf(moment.lines, place).done ??= event.at;
            const after = stagesOf(state, place.bread).find((one) => one.number > place.stage);
            begin(state, moment, { ...place, stage: after?.number ?? place.stage + 1 }, event.at);
            break;
        }
        case 'not_ready':
            if (doing) {
                doing.state = 'running';
                doing.look_from = event.until ?? doing.look_from;
                doing.free_until = doing.attention === 'wait' ? (event.until ?? null) : null;
                doing.end = {
                    ...doing.end,
                    likely: later(doing.end.likely, event.until),
                    high: later(doing.end.high, event.until),
                };
            }
            break;
        case 'act_done': {
            const line = lineOf(moment.lines, place);
            if (!line.acts_done.includes(event.act)) line.acts_done.push(event.act);
            for (const act of doing?.acts ?? []) if (act.act === event.act) act.done = true;
            break;
        }
        default:
            break; // what else is told needs the server's answer, or moves nothing
    }
}

// A tick that was taken back: its line is open again, with the times the plan has for it.
function takeBack(state: BakeState, moment: Moment, undone: BakeEvent): void {
    if (undone.kind === 'act_done') {
        const line = lineOf(moment.lines, undone);
        line.acts_done = line.acts_done.filter((act) => act !== undone.act);
        for (const one of moment.doing) {
            if (same(one, undone)) {
                for (const act of one.acts) if (act.act === undone.act) act.done = false;
            }
        }
    } else if (undone.kind === 'done' || undone.kind === 'begun') {
        for (const line of moment.lines) {
            if (line.bread !== undone.bread || line.stage < undone.stage) continue;
            line.done = null;
            if (line.stage > undone.stage) line.begun = null;
        }
        const begun = lineOf(moment.lines, undone).begun ?? undone.at;
        moment.next = moment.next.filter((one) => one.bread !== undone.bread);
        begin(state, moment, undone, begun);
    } else {
        moment.remedies = moment.remedies.filter((one) => one.id !== undone.id);
    }
}

/// Moves the clock on: what is due, what is to be looked at. Alarms stay, so that one whose time has
/// just come can ring.
export function onTheClock(moment: Moment, now: number): Moment {
    const past = (time: string | null): boolean => time !== null && instant(time) <= now;
    return {
        ...moment,
        free_until: past(moment.free_until) ? null : moment.free_until,
        doing: moment.doing.map((one) => ({
            ...one,
            state:
                one.state === 'to_begin'
                    ? one.state
                    : past(one.end.high)
                      ? 'late'
                      : past(one.look_from)
                        ? 'look'
                        : one.state,
            free_until: past(one.free_until) ? null : one.free_until,
            acts: one.acts.map((act) => ({ ...act, due: !act.done && past(act.at) })),
        })),
    };
}

function sayFor(moment: Moment, style: ClockStyle): string {
    const one = moment.doing[0];
    if (moment.finished || !one) return moment.finished ? 'Done. Eat well.' : moment.say;
    if (one.free_until) {
        const look = one.free_until === one.look_from ? ', then look' : '';
        return `${one.title}. Free until ${clock(one.free_until, style)}${look}.`;
    }
    return one.state === 'look' || one.state === 'late'
        ? `${one.title}. Look now.`
        : `${one.title}.`;
}

/// Needs:    `untold` in the order they happened; `known` holds the events a take-back may name.
/// Promises: with nothing untold and no time gone by, the server's own moment. The state is not
///           changed.
export function meanwhile(
    state: BakeState,
    untold: BakeEvent[],
    known: BakeEvent[],
    now: number,
    style: ClockStyle = '24',
): Moment {
    const moment = structuredClone(state.moment);
    const takenBack = new Set(
        untold.flatMap((event) => (event.kind === 'taken_back' ? [event.undoes] : [])),
    );
    for (const event of untold) {
        if (takenBack.has(event.id)) continue;
        if (event.kind === 'taken_back') {
            // Only what the server has counted must be undone; what it never saw was not laid over.
            const undone = known.find((one) => one.id === event.undoes);
            if (undone && !untold.includes(undone)) takeBack(state, moment, undone);
        } else {
            lay(state, moment, event);
        }
    }
    const moved = onTheClock(moment, now);
    const changed =
        untold.length > 0 ||
        moved.doing.some((one, index) => one.state !== state.moment.doing[index]?.state) ||
        moved.free_until !== state.moment.free_until;
    return changed ? { ...moved, say: sayFor(moved, style) } : moved;
}
