// SPDX-License-Identifier: Apache-2.0
//
// Which alarms ring when. The server names those ahead; one whose time comes between two of its
// answers must ring all the same, and each rings once.
import type { Alarm } from './api';
import { instant } from './times';

function aboutOf(alarm: Alarm): string {
    return `${alarm.bread} ${alarm.stage} ${alarm.kind} ${alarm.text}`;
}

function keyOf(alarm: Alarm): string {
    return `${aboutOf(alarm)} ${alarm.at}`;
}

export class AlarmBook {
    private readonly rung = new Set<string>();
    private ahead = new Map<string, Alarm>();

    /// `since`: what was due before the page was opened is no news.
    constructor(private readonly since: number) {}

    /// Promises: the alarms that ring now, once each, soonest first. What the newest list no longer
    ///           has is forgotten, unless its time has come and it was not moved to a later one.
    due(alarms: Alarm[], over: (alarm: Alarm) => boolean, now: number): Alarm[] {
        const next = new Map<string, Alarm>();
        for (const alarm of alarms) next.set(keyOf(alarm), alarm);
        const named = new Set(alarms.map(aboutOf));
        for (const [key, alarm] of this.ahead) {
            if (instant(alarm.at) <= now && !named.has(aboutOf(alarm))) next.set(key, alarm);
        }
        const ringing: Alarm[] = [];
        for (const [key, alarm] of next) {
            if (instant(alarm.at) > now) continue;
            next.delete(key);
            if (this.rung.has(key)) continue;
            this.rung.add(key);
            if (instant(alarm.at) >= this.since && !over(alarm)) ringing.push(alarm);
        }
        this.ahead = next;
        return ringing.sort((one, other) => instant(one.at) - instant(other.at));
    }
}
