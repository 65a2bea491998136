// Opens the page of `bedbow modes` in Chromium: shapes swing, their numbers are those of results.json:
//     node test/modes.mjs MODES_DIRECTORY [SCREENSHOT_DIRECTORY]
import assert from "node:assert/strict";
import { readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { atBothWidths, drawn, facts, rows, same, settle } from "./pages.mjs";

const directory = resolve(process.argv[2] ?? "out/hive-lid");
const shots = process.argv[3];
const file = join(directory, "report.html");
const { modes, steps } = JSON.parse(readFileSync(join(directory, "results.json"), "utf8"));
const shapes = [...modes.frequencies_Hz, ...modes.buckling_factors];

/** The picture at two moments an eighth of a swing and more apart. */
async function moments(page) {
  const first = await page.locator(".stage").screenshot();
  await page.waitForTimeout(350);
  return [first, await page.locator(".stage").screenshot()];
}

/** A shape is animated from the start; it stops and starts again on request. */
async function animation(page) {
  assert.match(await page.locator("#play").innerText(), /Stop/);
  let [a, b] = await moments(page);
  assert.notDeepEqual(a, b, "the shape swings");
  await page.locator("#play").click();
  await settle(page);
  [a, b] = await moments(page);
  assert.deepEqual(a, b, "stopped, it stands still");
  await page.locator("#exaggeration").fill("0");
  await settle(page);
  [b] = await moments(page);
  assert.notDeepEqual(a, b, "the slider changes how far it swings");
  assert.equal(await page.locator("#factor").innerText(), "none");
  await page.locator("#exaggeration").fill("6");
  await page.locator("#play").click();
  [a, b] = await moments(page);
  assert.notDeepEqual(a, b, "it swings again");
}

/** Each shape by the chooser: its number, and a distinct picture. */
async function everyShape(page, width) {
  await page.locator("#play").click();
  const seen = new Set();
  for (const [i, value] of shapes.entries()) {
    await page.selectOption("#step", String(i));
    assert.match(await page.locator("#play").innerText(), /Stop/, "a shape that is chosen swings");
    await page.locator("#play").click();
    same(await facts(page, i < modes.frequencies_Hz.length ? "frequency" : "buckles at"), value, `shape ${i + 1}`);
    assert.equal(await page.locator("#show-forces").isVisible(), false, "a shape has no forces");
    seen.add((await drawn(page, ".stage", `shape_${i + 1}_${width}`, shots)).toString("base64"));
    await page.selectOption("#part", { index: 1 });
    assert.match(await facts(page, "greatest displacement"), /\d+ % of the greatest/);
    await page.selectOption("#part", "");
  }
  assert.equal(seen.size, shapes.length, "no two shapes look alike");
}

assert.ok(statSync(file).size < 3e6, "the page stays below 3 MB");
await atBothWidths(file, async (page, width) => {
  await page.waitForSelector(".stage canvas");
  assert.match(await page.locator("#answer").innerText(), /lowest natural frequency is/);
  same((await page.locator("#answer").innerText()).replace(/^\D*/, ""), modes.frequencies_Hz[0], "answer");
  await page.locator(".stage").scrollIntoViewIfNeeded();
  await animation(page);
  await everyShape(page, width);
  assert.equal(await page.locator("#step option").count(), shapes.length + steps.length);
  await page.selectOption("#step", String(shapes.length));
  assert.equal(await page.locator("#show-forces").isVisible(), true, "steps have forces");
  const table = await rows(page.locator("table", { hasText: "Natural frequencies" }));
  table.forEach((r, i) => same(r[1], modes.frequencies_Hz[i], `table, mode ${i + 1}`));
  console.log(`modes at ${width} px: ${shapes.length} shapes swing, numbers as in results.json`);
});
