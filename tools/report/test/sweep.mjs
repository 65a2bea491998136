// Opens the page of a sweep in Chromium and holds it against the picture and the table beside it:
//     node test/sweep.mjs SWEEP_DIRECTORY
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { number, open } from "./browser.mjs";

const directory = resolve(process.argv[2] ?? "out/hive-lid-sweep");
const dots = (svg) => svg.match(/class="plot-mark[^"]*"/g)?.length ?? 0;

for (const width of [1280, 400]) {
  const { browser, page, errors } = await open(join(directory, "report.html"), { width });
  const answer = await page.locator("#answer").innerText();
  const [, pass, all] = /^(\d+) of (\d+) variants/.exec(answer) ?? [];
  const svg = page.locator(".plotbox svg:visible");
  assert.equal(dots(await svg.evaluate((s) => s.outerHTML)), dots(readFileSync(join(directory, "front.svg"), "utf8")));
  // Two kinds of dots stand in the legend, the others are variants.
  assert.equal(dots(await svg.evaluate((s) => s.outerHTML)) - 2, Number(all), "a dot for each variant");
  await svg.scrollIntoViewIfNeeded();
  const place = await svg.boundingBox();
  await page.mouse.move(place.x + place.width / 2, place.y + place.height / 2);
  assert.ok(number(await page.locator(".reading .value").first().innerText()).value > 0);
  // Down the table of those that no other beats, the price rises and the spread falls.
  const rows = await page.locator("table", { hasText: "no other beats" }).locator("tbody tr").evaluateAll((list) => list.map((r) => [...r.cells].map((c) => c.textContent)));
  assert.ok(rows.length > 0 && rows.length <= Number(pass), `${rows.length} rows of ${pass} that pass`);
  for (let i = 1; i < rows.length; ++i) {
    assert.ok(Number(rows[i][1]) >= Number(rows[i - 1][1]));
    assert.ok(Number(rows[i][2]) <= Number(rows[i - 1][2]));
  }
  const room = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(room[0] <= room[1], `at ${width} px the page is ${room[0]} px wide`);
  assert.deepEqual(errors, []);
  await browser.close();
  console.log(`sweep at ${width} px: ${pass} of ${all} variants, ${rows.length} in the table`);
}
