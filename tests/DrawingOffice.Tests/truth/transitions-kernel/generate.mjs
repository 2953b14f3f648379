// Cones, cut tubes and tight skins as two other programs see them: solids cut in a boundary-representation kernel, and convex hulls of points.
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import hull from "quickhull3d";
import { drawCircle, setOC, makeCylinder, measureVolume, measureArea } from "replicad";

const require = createRequire(import.meta.url);
const wasm = require.resolve("replicad-opencascadejs/wasm");
// The kernel's loader was made for bundlers and looks for these two in Node.
globalThis.require = require;
globalThis.__dirname = dirname(wasm);
const { default: init } = await import("replicad-opencascadejs");
setOC(await init({ locateFile: () => wasm }));

// It is published in the older module form.
const quickHull = hull.default ?? hull;
const rad = Math.PI / 180;
const sub = (a, b) => a.map((v, i) => v - b[i]);
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Frusta between parallel circles, leaning ones too: ruled between the circles. */
const cones = [
  { base: 60, top: 35, height: 90, offset: [0, 0] },
  { base: 60, top: 35, height: 90, offset: [40, 10] },
  { base: 25, top: 55, height: 70, offset: [-30, 0] },
].map((c) => {
  const low = drawCircle(c.base).sketchOnPlane("XY");
  const high = drawCircle(c.top).translate(c.offset[0], c.offset[1]).sketchOnPlane("XY", c.height);
  const solid = low.loftWith([high], { ruled: true });
  const volume = measureVolume(solid);
  return { ...c, volume_mm3: volume, skin_mm2: measureArea(solid) - Math.PI * (c.base ** 2 + c.top ** 2) };
});

/** A branch from the middle of a main along x, less the main: its round face is what a template covers; the main's, less what the branch takes. */
const saddles = [
  { main: 50, branch: 30, angle: 90, offset: 0, length: 150 },
  { main: 50, branch: 30, angle: 60, offset: 0, length: 200 },
  { main: 50, branch: 25, angle: 50, offset: 15, length: 200 },
  { main: 40, branch: 38, angle: 75, offset: 0, length: 180 },
].map((s) => {
  const along = [Math.cos(s.angle * rad), 0, Math.sin(s.angle * rad)];
  const half = 130;
  const main = () => makeCylinder(s.main, 2 * half, [-half, 0, 0], [1, 0, 0]);
  const branch = () => makeCylinder(s.branch, s.length, [0, s.offset, 0], along);
  const cut = branch().cut(main());
  const holed = main().cut(branch());
  const round = (solid, radius, axis) => solid.faces.filter((f) => f.geomType === "CYLINDRE" && Math.abs(radiusOf(f, axis) - radius) < 1e-3).reduce((sum, f) => sum + measureArea(f), 0);
  // A face belongs to the cylinder whose axis its points keep the radius from.
  const radiusOf = (f, axis) => { const p = f.pointOnSurface(0.37, 0.41).toTuple(); const d = sub(p, axis.at); const c = cross(d, axis.along); return Math.sqrt(dot(c, c)); };
  return {
    ...s,
    branch_volume_mm3: measureVolume(cut),
    template_mm2: round(cut, s.branch, { at: [0, s.offset, 0], along }),
    hole_mm2: 2 * Math.PI * s.main * 2 * half - round(holed, s.main, { at: [0, 0, 0], along: [1, 0, 0] }),
  };
});

/** Points of an end: turned in its plane, tilted about x, then about y, then moved. */
function rim(end) {
  const n = 720, flat = [];
  if (end.shape === "ellipse") for (let i = 0; i < n; i++) flat.push([(end.width / 2) * Math.cos((2 * Math.PI * i) / n), (end.height / 2) * Math.sin((2 * Math.PI * i) / n)]);
  if (end.shape === "polygon") flat.push(...end.corners);
  if (end.shape === "rectangle") {
    const [w, h, r] = [end.width / 2, end.height / 2, end.radius];
    for (const [x, y, from] of [[w - r, h - r, 0], [-w + r, h - r, 90], [-w + r, -h + r, 180], [w - r, -h + r, 270]])
      for (let i = 0; i <= (r > 0 ? n / 4 : 0); i++) flat.push([x + r * Math.cos((from + (360 * i) / n) * rad), y + r * Math.sin((from + (360 * i) / n) * rad)]);
  }
  const [ct, st] = [Math.cos(end.turn * rad), Math.sin(end.turn * rad)];
  const [cx, sx] = [Math.cos(end.tilt[0] * rad), Math.sin(end.tilt[0] * rad)];
  const [cy, sy] = [Math.cos(end.tilt[1] * rad), Math.sin(end.tilt[1] * rad)];
  return flat.map(([x, y]) => {
    const [a, b] = [ct * x - st * y, st * x + ct * y];
    const [p, q] = [cx * b, sx * b];
    return [cy * a + sy * q + end.at[0], p + end.at[1], -sy * a + cy * q + end.at[2]];
  });
}

const round = (d, at, tilt = [0, 0], turn = 0) => ({ shape: "ellipse", width: d, height: d, at, tilt, turn });
const oval = (width, height, at, tilt = [0, 0], turn = 0) => ({ shape: "ellipse", width, height, at, tilt, turn });
const box = (width, height, radius, at, tilt = [0, 0], turn = 0) => ({ shape: "rectangle", width, height, radius, at, tilt, turn });
const poly = (corners, at, tilt = [0, 0], turn = 0) => ({ shape: "polygon", corners, at, tilt, turn });
const hexagon = [0, 1, 2, 3, 4, 5].map((k) => [40 * Math.cos(k * 60 * rad), 40 * Math.sin(k * 60 * rad)]);

const skins = [
  { name: "square to round", first: box(120, 120, 0, [0, 0, 0]), second: round(80, [0, 0, 100]) },
  { name: "box to tilted round", first: box(120, 80, 0, [0, 0, 0]), second: round(76, [25, 0, 110], [0, 12]) },
  { name: "round corners to oval, turned", first: box(160, 100, 30, [0, 0, 0]), second: oval(90, 60, [0, 20, 140], [8, -5], 20) },
  { name: "round to round, tilted", first: round(100, [0, 0, 0]), second: round(60, [30, 10, 120], [15, 20]) },
  { name: "box to box, turned", first: box(100, 70, 0, [0, 0, 0]), second: box(60, 60, 0, [10, 0, 90], [0, 0], 30) },
  { name: "hexagon to round", first: poly(hexagon, [0, 0, 0]), second: round(50, [15, -10, 60], [-10, 0]) },
  { name: "oval to crossed oval", first: oval(120, 60, [0, 0, 0]), second: oval(50, 100, [0, 0, 100]) },
].map((s) => {
  const points = [...rim(s.first), ...rim(s.second)];
  let volume = 0, area = 0;
  for (const [i, j, k] of quickHull(points)) {
    const [a, b, c] = [points[i], points[j], points[k]];
    const n = cross(sub(b, a), sub(c, a));
    area += Math.sqrt(dot(n, n)) / 2;
    volume += dot(a, n) / 6;
  }
  return { ...s, volume_mm3: volume, surface_mm2: area };
});

const file = join(dirname(fileURLToPath(import.meta.url)), "shapes.json");
writeFileSync(file, JSON.stringify({ cones, saddles, skins }, null, 1) + "\n");
console.log(JSON.stringify({ cones, saddles, skins: skins.map(({ name, volume_mm3, surface_mm2 }) => ({ name, volume_mm3, surface_mm2 })) }, null, 1));
