// The camera and the pixels of a picture; what is in them is read in C#. Nothing leaves the machine.

// Longest side looked at, px: a code in it stays sharp and is read quickly.
const longest = 1200;

function grey(source, width, height) {
  const scale = Math.min(1, longest / Math.max(width, height));
  const [w, h] = [Math.max(1, Math.round(width * scale)), Math.max(1, Math.round(height * scale))];
  const canvas = new OffscreenCanvas(w, h);
  const context = canvas.getContext("2d", { willReadFrequently: true });
  context.drawImage(source, 0, 0, w, h);
  const rgba = context.getImageData(0, 0, w, h).data;
  const bytes = new Uint8Array(8 + w * h);
  const head = new DataView(bytes.buffer);
  head.setInt32(0, w, true);
  head.setInt32(4, h, true);
  // Brightness after Rec. ITU-R BT.601; a clear pixel counts as white paper.
  for (let i = 0, p = 0; p < w * h; i += 4, p++) {
    const clear = 255 - rgba[i + 3];
    bytes[8 + p] = Math.min(255, (rgba[i] * 299 + rgba[i + 1] * 587 + rgba[i + 2] * 114) / 1000 + clear);
  }
  return bytes;
}

// Why not, or null when the camera is open.
export async function open(video) {
  try {
    if (!navigator.mediaDevices) return "it is not allowed at this address";
    video.srcObject = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" }, audio: false });
    await video.play();
    return null;
  } catch (e) {
    return e.name;
  }
}

export function look(video) {
  return video.videoWidth ? grey(video, video.videoWidth, video.videoHeight) : null;
}

export function shut(video) {
  video?.srcObject?.getTracks().forEach(t => t.stop());
  if (video) video.srcObject = null;
}

export async function still(stream) {
  try {
    const picture = await createImageBitmap(new Blob([await stream.arrayBuffer()]));
    return grey(picture, picture.width, picture.height);
  } catch {
    return null;
  }
}
