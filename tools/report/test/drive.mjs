// Drives report.html of the hive-lid folder in Chromium and holds what it shows against results.json:
//     node test/drive.mjs REPORT_DIRECTORY [SCREENSHOT_DIRECTORY]
import assert from "node:assert/strict";
import { readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { colours, number, open } from "./browser.mjs";

const directory = resolve(process.argv[2] ?? "out/hive-lid");
const shots = process.argv[3];
const file = join(directory, "report.html");
const results = JSON.parse(readFileSync(join(directory, "results.json"), "utf8"));

/** A number shown is the computed one, rounded to the digits shown. */
function same(text, value, what) {
  const shown = number(text);
  assert.ok(Math.abs(shown.value - value) <= shown.half * 1.001, `${what}: shown "${text}", computed ${value}`);
}

async function picture(page, selector, name) {
  const png = await (selector ? page.locator(selector).screenshot() : page.screenshot());
  if (shots) (await import("node:fs")).writeFileSync(join(shots, `${name}.png`), png);
  return png;
}

/** Waits until no more frames are pending. */
const settle = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

async function limits(page) {
  const worst = (pick) => Math.max(...results.steps.map(pick).filter((v) => v !== null));
  const found = (what) => page.locator("#checks tr", { hasText: what }).locator("td").first().innerText();
  for (const body of ["clamp", "bed", "apron"])
    same(await found(`${body} bow`), worst((s) => s.bow[`${body}_mm`]), `bow of the ${body}`);
  same(await found("spread of the bend angle"), worst((s) => s.bow.angle_spread_deg), "angle spread");
  const answer = await page.locator("#answer").innerText();
  assert.match(answer, results.verdict.pass ? /^Within the limits/ : /^A limit is exceeded/);
}

async function facts(page, label) {
  return page.locator("#facts dt", { hasText: label }).locator("xpath=following-sibling::dd[1]").first().innerText();
}

/** Every step and every bar by name, then a post. */
async function numbersByStep(page) {
  for (const [i, step] of results.steps.entries()) {
    await page.selectOption("#step", String(i));
    for (const bar of step.bars) {
      await page.selectOption("#part", bar.name);
      same(await facts(page, "greatest stress"), bar.stress_MPa, `${step.name}, ${bar.name}`);
    }
    for (const post of step.posts) {
      await page.selectOption("#part", `post ${post.name}`);
      same(await facts(page, "tension"), post.force_N / 1000, `${step.name}, post ${post.name}`);
    }
  }
}

/** Clicks about the picture until a bar answers, and holds its number against the file. */
async function clickABar(page) {
  const step = results.steps[Number(await page.locator("#step").inputValue())];
  const box = await page.locator(".stage canvas").boundingBox();
  await page.selectOption("#part", "");
  for (const [x, y] of [[0.5, 0.62], [0.4, 0.6], [0.6, 0.6], [0.5, 0.4], [0.5, 0.5], [0.35, 0.5], [0.65, 0.45]]) {
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
    const title = await page.locator("#facts h3").innerText();
    const bar = step.bars.find((b) => title === `${b.name}, ${step.name}`);
    if (!bar) continue;
    same(await facts(page, "greatest stress"), bar.stress_MPa, `clicked ${bar.name}`);
    assert.equal(await page.locator("#part").inputValue(), bar.name);
    return bar.name;
  }
  throw new Error("clicking about the picture met no bar");
}

async function slider(page) {
  await page.selectOption("#step", "1");
  const at = async (value) => {
    await page.locator("#exaggeration").fill(String(value));
    await settle(page);
    return picture(page, ".stage", `slider_${value}`);
  };
  const still = await at(0);
  assert.equal(await page.locator("#factor").innerText(), "none");
  const moved = await at(8);
  assert.match(await page.locator("#factor").innerText(), /^\u00d7 200$/);
  assert.notDeepEqual(still, moved, "the slider changes the picture");
  await at(6);
}

/** Colour by each quantity: the scale reaches just beyond the greatest value. */
async function scales(page) {
  await page.selectOption("#colour", "stress");
  const end = number(await page.locator(".marks span").last().innerText()).value;
  const most = Math.max(...results.steps.flatMap((s) => s.bars.map((b) => b.stress_MPa)));
  // The picture's outline may show a little less or more than the sections' stress points.
  assert.ok(end > 0.8 * most && end < 2 * most, `scale of stress ends at ${end}, greatest ${most}`);
  await page.selectOption("#colour", "utilisation");
  assert.match(await page.locator(".scale-name").innerText(), /yield \[%\]/);
  await page.selectOption("#colour", "displacement");
}

async function keys(page) {
  await page.locator(".stage canvas").focus();
  const before = await picture(page, ".stage", "keys");
  await page.keyboard.press("ArrowLeft");
  await settle(page);
  assert.notDeepEqual(await picture(page, ".stage", "keys"), before, "an arrow key turns the machine");
  const step = Number(await page.locator("#step").inputValue());
  await page.keyboard.press(".");
  assert.equal(Number(await page.locator("#step").inputValue()), (step + 1) % results.steps.length);
  await page.keyboard.press("1");
}

/** The plot of the bend angle, read in its middle by the pointer, then one station on by a key. */
async function plot(page) {
  const box = page.locator(".plotbox").last();
  await box.scrollIntoViewIfNeeded();
  const svg = box.locator("svg:visible");
  const place = await svg.boundingBox();
  await page.mouse.move(place.x + place.width * 0.55, place.y + place.height * 0.6);
  const check = async () => {
    const [x, ...values] = await box.locator(".value").allInnerTexts();
    for (const [i, step] of results.steps.entries()) {
      const line = step.bend_line;
      const k = line.x_mm.findIndex((v) => Math.abs(v - number(x).value) <= number(x).half);
      assert.ok(k >= 0, `"${x}" is a station`);
      const shown = values[i].replace(`${step.name}: `, "");
      same(shown, line.angle_deviation_deg[k] - step.bow.angle_mean_deg, `${step.name} at ${x}`);
    }
    return x;
  };
  const first = await check();
  await box.focus();
  await page.keyboard.press("ArrowRight");
  assert.notEqual(await check(), first, "a key moves the reading on");
}

async function at(width, height) {
  const { browser, page, errors } = await open(file, { width, height });
  await page.waitForSelector(".stage canvas");
  await settle(page);
  const room = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(room[0] <= room[1], `at ${width} px the page is ${room[0]} px wide`);
  await limits(page);
  await numbersByStep(page);
  await slider(page);
  await page.locator(".stage").scrollIntoViewIfNeeded();
  const bar = await clickABar(page);
  await scales(page);
  await keys(page);
  const seen = await colours(page, await picture(page, ".stage", `machine_${width}`));
  assert.ok(seen.count > 40 && seen.most < 0.95, `the machine is drawn: ${JSON.stringify(seen)}`);
  const drawn = await colours(page, await picture(page, ".plots", `plots_${width}`));
  assert.ok(drawn.count > 40 && drawn.most < 0.99, `plots are drawn: ${JSON.stringify(drawn)}`);
  await plot(page);
  assert.deepEqual(errors, [], "no errors, no requests");
  await browser.close();
  console.log(`${width} px: clicked ${bar}, ${results.steps.length} steps, numbers as in results.json`);
}

/** Without WebGL, and without scripts: plots, tables and answer remain. */
async function without(what, options) {
  const { browser, page, errors } = await open(file, options);
  if (options.scripts !== false) await page.waitForSelector("#no-3d");
  assert.equal(await page.locator(".plotbox svg:visible").count(), 7);
  assert.ok((await page.locator("table:visible").count()) >= 4);
  await limits(page);
  assert.deepEqual(errors, []);
  await browser.close();
  console.log(`without ${what}: answer, plots and tables remain`);
}

/** On paper: whole pages, on either size. */
async function paper() {
  const { browser, page } = await open(file);
  for (const format of ["A4", "Letter"]) {
    const pdf = await page.pdf({ format, printBackground: true });
    if (shots) (await import("node:fs")).writeFileSync(join(shots, `${format}.pdf`), pdf);
    const pages = pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    assert.ok(pages >= 2 && pages <= 12, `${format}: ${pages} pages`);
    console.log(`${format}: ${pages} pages`);
  }
  // The picture was drawn for the window; on a narrower sheet it must shrink, not lose its right and lower part.
  await page.waitForSelector(".stage canvas");
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ media: "print" });
  const [canvas, stage] = await Promise.all([".stage canvas", ".stage"].map((s) => page.locator(s).boundingBox()));
  assert.ok(canvas.width <= stage.width + 1 && canvas.height <= stage.height + 1, "the machine is whole on paper");
  await browser.close();
}

assert.ok(statSync(file).size < 3e6, "the page stays below 3 MB");
await at(1280, 900);
await at(400, 850);
await without("WebGL", { webgl: false });
await without("scripts", { scripts: false });
await paper();
console.log(`report.html, ${(statSync(file).size / 1e6).toFixed(2)} MB: all as it should be`);
