// SPDX-License-Identifier: Apache-2.0
//
// A finger on the glass, as the browser itself has it.
export async function fingerDrags(page, what, pixels, steps = 6) {
    await what.scrollIntoViewIfNeeded();
    const box = await what.boundingBox();
    const x = box.x + box.width / 2;
    const y = box.y + box.height / 2;
    const client = await page.context().newCDPSession(page);
    const touch = (type, down) =>
        client.send('Input.dispatchTouchEvent', {
            type,
            touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + down }],
        });
    await touch('touchStart', 0);
    for (let step = 1; step <= steps; step += 1) await touch('touchMove', (pixels * step) / steps);
    await touch('touchEnd', pixels);
    await client.detach();
}
