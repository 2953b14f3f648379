// node read.mjs dxf|stl FILE: what an independent reader finds in the file, as JSON.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import { parseSTL } from '@amandaghassaei/stl-parser';

const [kind, path] = process.argv.slice(2);
const bytes = readFileSync(path);

function stl() {
  const mesh = parseSTL(bytes);
  return {
    vertices: Array.from(mesh.vertices),
    facets: Array.from(mesh.facesIndices),
    normals: Array.from(mesh.facesNormals),
  };
}

const found = kind === 'dxf' ? new DxfParser().parseSync(bytes.toString('utf8')) : stl();
process.stdout.write(JSON.stringify(found));
