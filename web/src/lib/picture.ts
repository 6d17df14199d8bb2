// SPDX-License-Identifier: Apache-2.0
//
// A photo from a phone is large, and knows where the kitchen is. What is kept is a plain picture of
// at most 1600 pixels, drawn anew, so that only what one sees is in it.

const longest = 1600;

export async function plainPicture(file: Blob): Promise<Blob> {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, longest / Math.max(picture.width, picture.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(picture.width * scale));
    canvas.height = Math.max(1, Math.round(picture.height * scale));
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    return new Promise((resolve, reject) => {
        canvas.toBlob(
            (made) => (made ? resolve(made) : reject(new Error('no picture came of it'))),
            'image/jpeg',
            0.85,
        );
    });
}
