// SPDX-License-Identifier: Apache-2.0
//
// A calendar file read by ical.js (npm), a reader that shares no code with ours or with libical:
//   node read_calendar.cjs BAKE.ics
// prints one line a thing, in UTC: "event START END" and "alarm TIME". Exit status 77 without
// ical.js; NODE_PATH or a folder node_modules says where it is.
"use strict";

const { readFileSync } = require("node:fs");

let ical;
try {
    ical = require("ical.js");
    ical = ical.default ?? ical;
} catch {
    console.error("ical.js is not installed");
    process.exit(77);
}

const instant = (time) => new Date(time.toUnixTime() * 1000).toISOString().slice(0, 16) + "Z";

const file = new ical.Component(ical.parse(readFileSync(process.argv[2], "utf8")));
for (const zone of file.getAllSubcomponents("vtimezone")) {
    ical.TimezoneService.register(zone);
}
for (const part of file.getAllSubcomponents("vevent")) {
    const event = new ical.Event(part);
    console.log("event", instant(event.startDate), instant(event.endDate), event.summary);
    for (const alarm of part.getAllSubcomponents("valarm")) {
        const trigger = alarm.getFirstPropertyValue("trigger");
        let time = trigger;
        if (trigger.icaltype === "duration") {
            time = event.startDate.clone();
            time.addDuration(trigger);
        }
        console.log("alarm", instant(time));
    }
}
