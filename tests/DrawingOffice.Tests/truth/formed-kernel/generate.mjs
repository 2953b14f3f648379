// Folded sections and flanged holes as a boundary-representation kernel sees them: volumes, and second moments of area from the
// inertia of a prism. Nothing of this project's own code takes part.
import { createRequire } from "node:module";
import { dirname } from "node:path";
import { writeFileSync } from "node:fs";
import { draw, setOC, getOC, measureVolume } from "replicad";

const require = createRequire(import.meta.url);
const wasm = require.resolve("replicad-opencascadejs/wasm");
globalThis.require = require;
globalThis.__dirname = dirname(wasm);
const { default: init } = await import("replicad-opencascadejs");
setOC(await init({ locateFile: () => wasm }));
const rad = Math.PI / 180;

/** One side of a sheet from flats and bends; offset is its height over mid-thickness, radii are those of the middle. */
function side(flats, bends, offset) {
  let [x, y, turn] = [0, offset, 0];
  const steps = [];
  flats.forEach((flat, i) => {
    x += flat * Math.cos(turn); y += flat * Math.sin(turn);
    steps.push({ line: [x, y] });
    if (i === bends.length) return;
    const { angle, radius } = bends[i];
    const up = Math.sign(angle);
    const r = radius - up * offset;
    const [cx, cy] = [x - up * r * Math.sin(turn), y + up * r * Math.cos(turn)];
    const at = (t) => [cx + up * r * Math.sin(turn + t), cy - up * r * Math.cos(turn + t)];
    const [middle, end] = [at((angle * rad) / 2), at(angle * rad)];
    steps.push({ arc: [end, middle] });
    [x, y] = end; turn += angle * rad;
  });
  return steps.filter((s, i) => !s.line || i === 0 || Math.hypot(s.line[0] - (steps[i - 1].line ?? steps[i - 1].arc[0])[0], s.line[1] - (steps[i - 1].line ?? steps[i - 1].arc[0])[1]) > 1e-9);
}

function sheet({ flats, bends, thickness }) {
  const [lower, upper] = [side(flats, bends, -thickness / 2), side(flats, bends, thickness / 2)];
  let pen = draw([0, -thickness / 2]);
  for (const s of lower) pen = s.line ? pen.lineTo(s.line) : pen.threePointsArcTo(...s.arc);
  const ends = [[0, thickness / 2], ...upper.map((s) => s.line ?? s.arc[0])];
  pen = pen.lineTo(ends.at(-1));
  for (let i = upper.length - 1; i >= 0; i--)
    pen = upper[i].line ? pen.lineTo(ends[i]) : pen.threePointsArcTo(ends[i], upper[i].arc[1]);
  return pen.close();
}

function moments(drawing) {
  const oc = getOC(), length = 10;
  const solid = drawing.sketchOnPlane("XY").extrude(length);
  const props = new oc.GProp_GProps();
  oc.BRepGProp.VolumeProperties(solid.wrapped, props, false, false, false);
  const area = props.Mass() / length, c = props.CentreOfMass();
  // About an axis through the middle of the prism; what the prism's length adds is taken off.
  const about = (turn) => props.MomentOfInertia(new oc.gp_Ax1(c, new oc.gp_Dir(Math.cos(turn), Math.sin(turn), 0))) / length - (area * length ** 2) / 12;
  const [ix, iy, slant] = [about(0), about(Math.PI / 2), about(Math.PI / 4)];
  return { area, x: c.X(), y: c.Y(), ix, iy, ixy: (ix + iy) / 2 - slant };
}

const b = (angle, radius) => ({ angle, radius });
const sections = [
  { name: "lipped channel", thickness: 2, flats: [5, 40, 100, 40, 5], bends: [b(90, 4), b(90, 4), b(90, 4), b(90, 4)] },
  { name: "odd zed", thickness: 1.6, flats: [20, 33, 28], bends: [b(72, 5), b(-110, 3)] },
  { name: "round bead", thickness: 0.9, flats: [22, 0, 0, 22], bends: [b(41.11209044, 2.45), b(-82.22418088, 9.7166666667), b(41.11209044, 2.45)] },
  { name: "flat bead", thickness: 1.2, flats: [15, 6, 18, 6, 15], bends: [b(35, 3), b(-35, 2.6), b(-35, 2.6), b(35, 3)] },
].map((s) => ({ ...s, ...moments(sheet(s)) }));

const holes = [
  { inside: 50, height: 6, radius: 2.5, thickness: 1 },
  { inside: 30, height: 9, radius: 4, thickness: 1.5 },
  { inside: 100, height: 12, radius: 5, thickness: 0.9 },
].map((h) => {
  const { inside, height, radius: r, thickness: t } = h, i = inside / 2, c = i + t + r, k = Math.SQRT1_2;
  // Radius to the right, height up, the punch side at 0: out along the bend, down the flange, and back.
  const profile = draw([c, 0]).lineTo([c, -t]).threePointsArcTo([i + t, -t - r], [c - r * k, -t - r + r * k]).lineTo([i + t, -height]).lineTo([i, -height])
    .lineTo([i, -t - r]).threePointsArcTo([c, 0], [c - (r + t) * k, -t - r + (r + t) * k]).close();
  return { ...h, volume: measureVolume(profile.sketchOnPlane("XZ").revolve([0, 0, 1])) };
});
writeFileSync("formed.json", JSON.stringify({ sections, holes }, null, 1) + "\n");
console.log(JSON.stringify({ sections: sections.map((s) => [s.name, s.area, s.ix, s.iy, s.ixy]), holes }, null, 1));
