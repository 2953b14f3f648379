// node read.mjs dxf|stl FILE: what an independent reader finds in the file, as JSON.
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import parseStl from 'parse-stl';

const [kind, path] = process.argv.slice(2);
const bytes = readFileSync(path);
const found = kind === 'dxf' ? new DxfParser().parseSync(bytes.toString('utf8')) : parseStl(bytes);
process.stdout.write(JSON.stringify(found));
