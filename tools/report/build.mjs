// Bundles src/ into DIR/report.js and DIR/report.css: node build.mjs DIR
import { build } from "esbuild";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const out = process.argv[2];
if (!out) throw new Error("say where to put the bundle: node build.mjs dist");

// A comment that is kept: what the bundle holds, and on what terms.
const terms = ["three", "d3-scale-chromatic", "d3-color", "d3-interpolate"].map((name) => {
  const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, "utf8"));
  return `${name} ${version}\n\n${readFileSync(`node_modules/${name}/LICENSE`, "utf8").trim()}`;
});
const banner = `/*!\nThis script holds:\n\n${terms.join("\n\n")}\n*/`;

const shared = { bundle: true, minify: true, legalComments: "none", logLevel: "warning" };
const script = await build({
  ...shared,
  entryPoints: ["src/main.ts"],
  format: "iife",
  target: "es2022",
  write: false,
});
// Inside a page these would end the script element or open a comment.
const text = script.outputFiles[0].text.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");
writeFileSync(join(out, "report.js"), `${banner}\n${text}`);
await build({ ...shared, entryPoints: ["src/report.css"], outfile: join(out, "report.css") });
