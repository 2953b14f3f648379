// Folded sections as a boundary-representation kernel sees them: an extruded profile with true arcs, holes cut through.
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import { draw, setOC, makeCylinder, measureVolume, measureArea } from "replicad";

const require = createRequire(import.meta.url);
const wasm = require.resolve("replicad-opencascadejs/wasm");
// The kernel's loader was made for bundlers and looks for these two in Node.
globalThis.require = require;
globalThis.__dirname = dirname(wasm);
const { default: init } = await import("replicad-opencascadejs");
setOC(await init({ locateFile: () => wasm }));

const rad = Math.PI / 180;

/** One side of the sheet as straight and arc steps; offset is its height over the lower side. */
function side(flats, bends, thickness, offset) {
  let [x, y, turn] = [0, offset, 0];
  const steps = [];
  flats.forEach((flat, i) => {
    x += flat * Math.cos(turn); y += flat * Math.sin(turn);
    steps.push({ line: [x, y] });
    if (i === bends.length) return;
    const { angle, radius } = bends[i];
    const up = Math.sign(angle);
    const r = up > 0 ? radius + thickness - offset : radius + offset;
    const [cx, cy] = [x - up * r * Math.sin(turn), y + up * r * Math.cos(turn)];
    const at = (t) => [cx + up * r * Math.sin(turn + t), cy - up * r * Math.cos(turn + t)];
    const [middle, end] = [at((angle * rad) / 2), at(angle * rad)];
    steps.push({ arc: [end, middle] });
    [x, y] = end; turn += angle * rad;
  });
  return steps;
}

function profile({ flats, bends, thickness }) {
  const lower = side(flats, bends, thickness, 0);
  const upper = side(flats, bends, thickness, thickness);
  let pen = draw([0, 0]);
  for (const s of lower) pen = s.line ? pen.lineTo(s.line) : pen.threePointsArcTo(...s.arc);
  const ends = [[0, thickness], ...upper.map((s) => s.line ?? s.arc[0])];
  pen = pen.lineTo(ends.at(-1));
  for (let i = upper.length - 1; i >= 0; i--)
    pen = upper[i].line ? pen.lineTo(ends[i]) : pen.threePointsArcTo(ends[i], upper[i].arc[1]);
  return pen.close();
}

const sections = [
  { name: "angle", thickness: 2, width: 50, flats: [56, 36], bends: [{ angle: 90, radius: 2 }], holes: [{ x: 20, z: 25, diameter: 8.5 }] },
  { name: "open angle", thickness: 1.5, width: 40, flats: [30, 25], bends: [{ angle: 35, radius: 4 }], holes: [] },
  { name: "channel", thickness: 1.2, width: 80, flats: [20, 45, 20], bends: [{ angle: 90, radius: 1.5 }, { angle: 90, radius: 1.5 }], holes: [] },
  { name: "zed", thickness: 3, width: 60, flats: [25, 30, 25], bends: [{ angle: 90, radius: 3 }, { angle: -90, radius: 5 }], holes: [{ x: 12, z: 30, diameter: 6.5 }] },
  { name: "hat", thickness: 1, width: 120, flats: [15, 28, 40, 28, 15], bends: [{ angle: 70, radius: 2 }, { angle: -70, radius: 2 }, { angle: -70, radius: 2 }, { angle: 70, radius: 2 }], holes: [] },
];

const results = sections.map((s) => {
  let solid = profile(s).sketchOnPlane("XY").extrude(s.width);
  for (const h of s.holes) solid = solid.cut(makeCylinder(h.diameter / 2, 10 * s.thickness, [h.x, -5 * s.thickness, h.z], [0, 1, 0]));
  return { ...s, volume_mm3: measureVolume(solid), surface_mm2: measureArea(solid) };
});
const file = join(dirname(fileURLToPath(import.meta.url)), "folded-sections.json");
writeFileSync(file, JSON.stringify(results, null, 1) + "\n");
for (const r of results) console.log(r.name, r.volume_mm3, r.surface_mm2);
