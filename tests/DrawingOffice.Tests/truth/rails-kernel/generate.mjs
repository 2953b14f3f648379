// Rails as a boundary-representation kernel sees them: a straight one extruded, one swept round a full turn.
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { writeFileSync } from "node:fs";
import { draw, setOC, measureVolume } from "replicad";

const require = createRequire(import.meta.url);
const wasm = require.resolve("replicad-opencascadejs/wasm");
// The kernel's loader was made for bundlers and looks for these two in Node.
globalThis.require = require;
globalThis.__dirname = dirname(wasm);
const { default: init } = await import("replicad-opencascadejs");
setOC(await init({ locateFile: () => wasm }));

/** A C section outside web × flange, true arcs, the web's back on the y axis from y = 0 to y = web. */
function channel({ web, flange, thickness: t, radius: r }, x0 = 0, y0 = 0) {
  const [R, s] = [r + t, Math.SQRT1_2];
  return draw([x0 + flange, y0]).lineTo([x0 + R, y0]).threePointsArcTo([x0, y0 + R], [x0 + R - R * s, y0 + R - R * s])
    .lineTo([x0, y0 + web - R]).threePointsArcTo([x0 + R, y0 + web], [x0 + R - R * s, y0 + web - R + R * s]).lineTo([x0 + flange, y0 + web])
    .lineTo([x0 + flange, y0 + web - t]).lineTo([x0 + R, y0 + web - t]).threePointsArcTo([x0 + t, y0 + web - R], [x0 + R - r * s, y0 + web - R + r * s])
    .lineTo([x0 + t, y0 + R]).threePointsArcTo([x0 + R, y0 + t], [x0 + R - r * s, y0 + R - r * s]).lineTo([x0 + flange, y0 + t]).close();
}

const section = { web: 80, flange: 35, thickness: 2, radius: 3 };
const straight = channel(section).sketchOnPlane("XY").extrude(400);
// About an upright line below the lower edge; the test takes the share of its angle.
const turned = (below) => channel(section, 0, below).sketchOnPlane("XY").revolve([1, 0, 0], { origin: [0, 0, 0] });
const results = [
  { name: "straight", ...section, length: 400, volume_mm3: measureVolume(straight) },
  { name: "swept", ...section, lower_radius: 300, full_turn_volume_mm3: measureVolume(turned(300)) },
];
const file = join(dirname(fileURLToPath(import.meta.url)), "rails.json");
writeFileSync(file, JSON.stringify(results, null, 1) + "\n");
for (const r of results) console.log(r);
