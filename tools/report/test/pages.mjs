// What the tests of every page have in common.
import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { colours, number, open } from "./browser.mjs";

/** Waits until no more frames are pending. */
export const settle = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** A number shown is the computed one, rounded to the digits shown. */
export function same(text, value, what) {
  const shown = number(text);
  assert.ok(Math.abs(shown.value - value) <= shown.half * 1.001, `${what}: shown "${text}", computed ${value}`);
}

/** The texts of a table's rows. */
export const rows = (table) =>
  table.locator("tbody tr").evaluateAll((list) => list.map((r) => [...r.cells].map((c) => c.textContent)));

/** What stands beside a label of the chosen part or shape. */
export const facts = (page, label) =>
  page.locator("#facts dt", { hasText: label }).locator("xpath=following-sibling::dd[1]").first().innerText();

/** Something is drawn there: more than paper and one line. */
export async function drawn(page, selector, name, shots) {
  const png = await page.locator(selector).first().screenshot();
  if (shots) writeFileSync(join(shots, `${name}.png`), png);
  const seen = await colours(page, png);
  assert.ok(seen.count > 20 && seen.most < 0.985, `${name} is drawn: ${JSON.stringify(seen)}`);
  return png;
}

/** Opens the page at both widths, offline, and calls `look(page, width)`. It must fit, be quiet, and have alt texts. */
export async function atBothWidths(file, look) {
  for (const width of [1280, 400]) {
    const { browser, page, errors } = await open(file, { width });
    await look(page, width);
    const room = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    assert.ok(room[0] <= room[1], `at ${width} px the page is ${room[0]} px wide`);
    const mute = await page.locator("svg:visible, canvas").evaluateAll((list) =>
      list.filter((e) => !e.querySelector("title")?.textContent && !e.getAttribute("aria-label")).length);
    assert.equal(mute, 0, "every picture has a text for those who don't see it");
    assert.deepEqual(errors, [], "no errors, no requests");
    await browser.close();
  }
}
