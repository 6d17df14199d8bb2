-- SPDX-License-Identifier: Apache-2.0
--
-- What wrk asks of the server: wrk -s requests.lua URL -- KIND RECIPE
--
--   known    a plan of the same recipe, every day and hour another
--   anew     the same, and each time in words that were never seen, so that nothing is known of it
--   file     nothing but the address
--   events   one event of the bake "bench", each with an id of its own
local kind, text
local count, place = 0, 0

local function quoted(words)
   return '"' .. words:gsub('[%c"\\]', function(c) return string.format('\\u%04x', c:byte()) end) .. '"'
end

function setup(thread)
   place = place + 1
   thread:set('place', place)
end

function init(arguments)
   kind = arguments[1]
   local file = io.open(arguments[2])
   text = file:read('*a')
   file:close()
   if kind == 'file' then return end
   wrk.method = 'POST'
   wrk.headers['Content-Type'] = 'application/json'
end

function request()
   if kind == 'file' then return wrk.format() end
   count = count + 1
   if kind == 'events' then
      return wrk.format(nil, nil, nil, string.format(
         '{"events":[{"id":"t%d-%d-%d","at":"2026-11-28T14:00:00Z","kind":"note","text":"it smells of yeast"}]}',
         os.time(), place, count))
   end
   local words = kind == 'anew' and text .. string.format('\nMade %d times in kitchen %d.\n', count, place) or text
   -- Some minute of the week from Sunday on; the clock says Saturday morning.
   local minutes = (count * 37 + place * 11) % (7 * 24 * 60)
   local eat_by = os.date('!%Y-%m-%dT%H:%M:00Z', 1795910400 + 60 * minutes)
   return wrk.format(nil, nil, nil, string.format(
      '{"version":1,"breads":[{"name":"bench","text":%s}],"kitchen":{"room_c":19},"day":{"zone":"Europe/London"},'
      .. '"now":"2026-11-28T08:00:00Z","eat_by":"%s"}', quoted(words), eat_by))
end


function done(summary, latency)
   local errors = summary.errors
   io.write(string.format('%.0f a second, median %.1f ms, p99 %.1f ms, %d asked, %d not answered as they should be\n',
      summary.requests / (summary.duration / 1e6), latency:percentile(50) / 1e3, latency:percentile(99) / 1e3,
      summary.requests, errors.status + errors.connect + errors.read + errors.write + errors.timeout))
end
