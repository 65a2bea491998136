// Opens the pages of `bedbow posts` and `bedbow capacity` in Chromium and holds them against what --json printed:
//     node test/studies.mjs POSTS_DIRECTORY CAPACITY_DIRECTORY [SCREENSHOT_DIRECTORY]
// Each directory holds report.html and answer.json.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { number } from "./browser.mjs";
import { atBothWidths, drawn, rows, same } from "./pages.mjs";

const [posts, capacity] = process.argv.slice(2, 4).map((d) => resolve(d));
const shots = process.argv[4];
const answerOf = (directory) => JSON.parse(readFileSync(join(directory, "answer.json"), "utf8"));

const { counts, smallest } = answerOf(posts);
await atBothWidths(join(posts, "report.html"), async (page, width) => {
  assert.ok((await page.locator("#answer").innerText()).startsWith(`${smallest} posts at x = `));
  const table = await rows(page.locator("table", { hasText: "Best places" }));
  assert.equal(table.length, counts.length);
  for (const [i, c] of counts.entries()) {
    same(table[i][1], c.angle_spread_deg, `${c.count} posts, spread`);
    same(table[i][2], c.clamp_bow_mm, `${c.count} posts, bow`);
    assert.deepEqual(table[i][7].split(" ").map(Number), c.x_mm.map((x) => Math.round(x)));
  }
  // The plot of bow over spacing, read in its middle.
  await drawn(page, ".plotbox", `posts_plot_${width}`, shots);
  await page.locator(".plotbox svg:visible").scrollIntoViewIfNeeded();
  const place = await page.locator(".plotbox svg:visible").boundingBox();
  await page.mouse.move(place.x + place.width / 2, place.y + place.height / 2);
  const [spacing, bow] = await page.locator(".reading .value").allInnerTexts();
  assert.ok(number(spacing).value > 100 && number(bow).value >= 0);
  // The machine stands on the posts that the answer names.
  await page.waitForSelector(".stage canvas");
  await drawn(page, ".stage", `posts_machine_${width}`, shots);
  const parts = await page.locator("#part option").allInnerTexts();
  assert.equal(parts.filter((p) => /^post /.test(p)).length, smallest);
  console.log(`posts at ${width} px: ${counts.length} counts as in the JSON`);
});

const sheets = answerOf(capacity).rows;
await atBothWidths(join(capacity, "report.html"), async (page, width) => {
  const table = await rows(page.locator("table", { hasText: "Each sheet" }));
  assert.equal(table.length, sheets.length);
  for (const [i, s] of sheets.entries()) {
    same(table[i][1], s.width_mm, `row ${i + 1}, width`);
    if (s.thickness_mm === null) assert.equal(table[i][3], "none");
    else same(table[i][3], s.thickness_mm, `row ${i + 1}, thickness`);
    assert.equal(table[i][4], s.limited_by);
  }
  // The shaded picture says the same, cell by cell.
  await drawn(page, ".mapbox", `capacity_map_${width}`, shots);
  const cells = await page.locator(".mapbox svg:visible").evaluate((svg) =>
    [...svg.querySelectorAll("rect + text")].map((t) => t.textContent).filter((t) => /^(none|\d+\.\d\d)$/.test(t)));
  assert.deepEqual(cells, sheets.map((s) => (s.thickness_mm === null ? "none" : s.thickness_mm.toFixed(2))));
  assert.ok((await page.locator(".mapbox svg:visible").textContent()).includes("post"), "the posts are drawn in");
  await page.waitForSelector(".stage canvas");
  await drawn(page, ".stage", `capacity_machine_${width}`, shots);
  console.log(`capacity at ${width} px: ${sheets.length} sheets as in the JSON`);
});
