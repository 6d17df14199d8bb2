// SPDX-License-Identifier: Apache-2.0

/// Hands a file to the browser, to be kept under this name.
export function saveFile(bytes: Blob, name: string): void {
    const address = URL.createObjectURL(bytes);
    const link = document.createElement('a');
    link.href = address;
    link.download = name.replace(/[\\/:*?"<>|]/g, ' ');
    link.click();
    // The browser has taken it by then.
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
