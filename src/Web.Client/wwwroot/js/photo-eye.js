// A photograph decoded by the browser, as grey pixels that the back room measures in. Nothing leaves the machine.

// Rows taken out of the picture at a time: a whole one in colour would fill a phone's memory.
const strip = 256;

// 8-bit figures to light and back (IEC 61966-2-1), light in 1/4095.
const light = Float32Array.from({ length: 256 }, (_, v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; });
const figure = Uint8Array.from({ length: 4096 }, (_, i) => { const l = i / 4095; return Math.round(255 * (l <= 0.0031308 ? 12.92 * l : 1.055 * l ** (1 / 2.4) - 0.055)); });

let grey = null;

// Width and height in px, upright and no more than so many pixels; null when the browser cannot show it.
export async function open(address, most) {
  grey = null;
  let picture;
  try {
    const reply = await fetch(address);
    if (!reply.ok) return null;
    const file = await reply.blob();
    picture = await createImageBitmap(file, { imageOrientation: "from-image" });
    const scale = Math.min(1, Math.sqrt(most / (picture.width * picture.height)));
    if (scale < 1) {
      const smaller = await createImageBitmap(picture, { resizeWidth: Math.floor(picture.width * scale), resizeHeight: Math.floor(picture.height * scale), resizeQuality: "high" });
      picture.close();
      picture = smaller;
    }
  } catch {
    return null;
  }
  const [w, h] = [picture.width, picture.height];
  const canvas = new OffscreenCanvas(w, Math.min(strip, h));
  const context = canvas.getContext("2d", { willReadFrequently: true });
  const bytes = new Uint8Array(w * h);
  for (let top = 0; top < h; top += strip) {
    const rows = Math.min(strip, h - top);
    context.drawImage(picture, 0, top, w, rows, 0, 0, w, rows);
    const rgba = context.getImageData(0, 0, w, rows).data;
    // Weighed as light by ITU-R BT.709, as the engine does it.
    for (let i = 0, p = top * w; i < rgba.length; i += 4, p++)
      bytes[p] = figure[Math.round(4095 * (0.2126 * light[rgba[i]] + 0.7152 * light[rgba[i + 1]] + 0.0722 * light[rgba[i + 2]]))];
  }
  picture.close();
  grey = bytes;
  return [w, h];
}

// A byte for each pixel by rows from the top.
export function pixels() {
  return grey;
}

export function shut() {
  grey = null;
}
