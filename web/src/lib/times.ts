// SPDX-License-Identifier: Apache-2.0
//
// Times as people read them. The server writes each time with the offset of the zone it is meant in,
// so the clock time is simply what stands there: a phone that is set to another zone shows the same.

export type ClockStyle = '24' | '12';

const day_ms = 86_400_000;
const minute_ms = 60_000;

export function instant(time: string): number {
    return Date.parse(time);
}

/// "14:35", or "2:35 pm".
export function clock(time: string, style: ClockStyle = '24'): string {
    const hours = Number(time.slice(11, 13));
    const minutes = time.slice(14, 16);
    if (style === '24') return `${String(hours).padStart(2, '0')}:${minutes}`;
    return `${hours % 12 === 0 ? 12 : hours % 12}:${minutes} ${hours < 12 ? 'am' : 'pm'}`;
}

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/// "Sat 28 Nov" of "2026-11-28…".
export function dayName(date: string): string {
    const [year = 0, month = 1, day = 1] = date.slice(0, 10).split('-').map(Number);
    const weekday = weekdays[new Date(Date.UTC(year, month - 1, day)).getUTCDay()] ?? '';
    return `${weekday} ${day} ${months[month - 1] ?? ''}`;
}

/// The clock time, with the day in front where it is not the day of `beside`.
export function clockWithDay(time: string, beside: string, style: ClockStyle = '24'): string {
    const words = clock(time, style);
    return time.slice(0, 10) === beside.slice(0, 10) ? words : `${dayName(time)}, ${words}`;
}

/// "2026-11-28T18:30" of an answer's time: the form requests take.
export function local(time: string): string {
    return time.slice(0, 16);
}

// Local times as numbers on a clock without zone, for adding and comparing alone.
export function fromLocal(time: string): number {
    return Date.parse(`${time.slice(0, 16)}:00Z`);
}

export function toLocal(value: number): string {
    return new Date(value).toISOString().slice(0, 16);
}

/// Now, as the wall clock of this browser shows it.
export function localNow(now: number): string {
    const date = new Date(now);
    return toLocal(now - date.getTimezoneOffset() * minute_ms);
}

/// `time` moved by so many minutes, in whole steps of five.
export function moved(time: string, minutes: number): string {
    const step = 5 * minute_ms;
    return toLocal(Math.round((fromLocal(time) + minutes * minute_ms) / step) * step);
}

export function dateAfter(date: string, days: number): string {
    return toLocal(fromLocal(`${date.slice(0, 10)}T00:00`) + days * day_ms).slice(0, 10);
}

/// What the screens send as "now" and "at": RFC 3339 in whole seconds.
export function stamp(now: number): string {
    return `${new Date(now).toISOString().slice(0, 19)}Z`;
}

/// "1 h 35", "40 min".
export function lengthWords(minutes: number): string {
    const whole = Math.round(minutes);
    const hours = Math.floor(whole / 60);
    const rest = whole % 60;
    if (hours === 0) return `${rest} min`;
    return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
}

/// How long until `time`: whole minutes, seconds only in the last five, "now" once it is there.
export function left(time: string, now: number): string {
    const seconds = Math.ceil((instant(time) - now) / 1000);
    if (seconds <= 0) return 'now';
    if (seconds > 300) return lengthWords(Math.ceil(seconds / 60));
    const minutes = Math.floor(seconds / 60);
    const rest = seconds % 60;
    return minutes === 0 ? `${rest} s` : `${minutes} min ${String(rest).padStart(2, '0')} s`;
}

/// The same for the ear: "about 23 minutes".
export function leftSpoken(time: string, now: number): string {
    const minutes = Math.ceil((instant(time) - now) / minute_ms);
    if (minutes <= 0) return 'now';
    const hours = Math.floor(minutes / 60);
    const rest = minutes % 60;
    const parts: string[] = [];
    if (hours > 0) parts.push(hours === 1 ? '1 hour' : `${hours} hours`);
    if (rest > 0) parts.push(rest === 1 ? '1 minute' : `${rest} minutes`);
    return `in ${parts.join(' and ')}`;
}

/// The same moment, written with the offset that `sample` has.
export function asIn(time: string, sample: string): string {
    const found = /([+-])(\d\d):(\d\d)$/.exec(sample);
    if (!found) return stamp(instant(time));
    const minutes = (Number(found[2]) * 60 + Number(found[3])) * (found[1] === '-' ? -1 : 1);
    const shifted = new Date(instant(time) + minutes * minute_ms).toISOString().slice(0, 19);
    return `${shifted}${found[0]}`;
}
