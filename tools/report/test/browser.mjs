// What the tests need of a browser: Debian's Chromium, offline, with an ear for whatever goes wrong.
import { chromium } from "playwright-core";

const quiet = ["--no-sandbox", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-quic"];
const software3d = ["--use-angle=swiftshader", "--enable-unsafe-swiftshader"];
const no3d = ["--disable-3d-apis"];

/** Opens a file with the network off. `errors` collects console errors, script errors, and requests for anything else. */
export async function open(file, { width = 1280, height = 900, scripts = true, webgl = true, scheme = "light" } = {}) {
  const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: [...quiet, ...(webgl ? software3d : no3d)] });
  const context = await browser.newContext({ viewport: { width, height }, javaScriptEnabled: scripts, colorScheme: scheme });
  await context.setOffline(true);
  const page = await context.newPage();
  const errors = [];
  page.on("console", (m) => { if (m.type() === "error") errors.push(m.text()); });
  page.on("pageerror", (e) => errors.push(String(e)));
  page.on("request", (r) => { if (!/^(file|data|blob):/.test(r.url())) errors.push(`asked for ${r.url()}`); });
  await page.goto(`file://${file}`);
  return { browser, page, errors };
}

/** How many colours a PNG holds, and the share of the most frequent one; counted by the browser's own decoder. */
export async function colours(page, png) {
  return page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const paper = canvas.getContext("2d");
    paper.drawImage(image, 0, 0);
    const pixels = new Uint32Array(paper.getImageData(0, 0, image.width, image.height).data.buffer);
    const counts = new Map();
    for (const p of pixels) counts.set(p, (counts.get(p) ?? 0) + 1);
    return { count: counts.size, most: Math.max(...counts.values()) / pixels.length };
  }, png.toString("base64"));
}

/** The first number of a text that people read: true minus signs, units behind it. */
export function number(text) {
  const found = /[\u2212-]?\d+(\.\d+)?/.exec(text);
  if (!found) throw new Error(`no number in "${text}"`);
  return { value: Number(found[0].replace("\u2212", "-")), half: 0.5 * 10 ** -(found[0].split(".")[1]?.length ?? 0) };
}
