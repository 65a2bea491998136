#include "io/report/report_solve.h"
#include "io/results/result_tables.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace bedbow {

namespace {

Case a_case() {
  Case c;
  c.machine = test::machine();
  return c;
}

const ReportCheck& check(const std::vector<ReportCheck>& all, const std::string& what) {
  for (const ReportCheck& c : all)
    if (c.what.find(what) != std::string::npos) return c;
  throw std::out_of_range("no check of " + what);
}

TEST(Report, ALimitIsJudgedAtTheWorstStep) {
  Case c = a_case();
  const Findings f = test::findings();
  double spread = 0;
  for (const StepResult& s : f.steps)
    if (std::isfinite(s.bow.angle_spread)) spread = std::max(spread, s.bow.angle_spread);
  c.machine.limits.angle = spread * 1.01;
  EXPECT_EQ(check(solve_checks(c, f), "bend angle").outcome, ReportCheck::Outcome::pass);
  c.machine.limits.angle = spread * 0.99;
  EXPECT_EQ(check(solve_checks(c, f), "bend angle").outcome, ReportCheck::Outcome::fail);
  c.machine.limits.angle.reset();
  EXPECT_EQ(check(solve_checks(c, f), "bend angle").outcome, ReportCheck::Outcome::no_limit);
}

// The nose's opening is judged only where the case limits it.
TEST(Report, OpeningOfTheNoseIsJudged) {
  Case c = a_case();
  Findings f = test::findings();
  const ReportCheck opened = check(solve_checks(c, f), "nose opening");
  EXPECT_EQ(opened.found, "0.100 mm");
  EXPECT_EQ(opened.limit, "-");
  EXPECT_EQ(opened.outcome, ReportCheck::Outcome::no_limit);
  c.machine.limits.nose_opening = 0.09e-3;
  EXPECT_EQ(check(solve_checks(c, f), "nose opening").outcome, ReportCheck::Outcome::fail);
  c.machine.limits.nose_opening = 0.11e-3;
  EXPECT_EQ(check(solve_checks(c, f), "nose opening").outcome, ReportCheck::Outcome::pass);
}

// "The nose is off the sheet" was said where it presses with the sheet's own lever.
TEST(Report, WhereTheClampHasNoReserveItsForceIsGiven) {
  Findings f = test::findings();
  EXPECT_EQ(hold_words(f, {}),
            std::vector<std::string>{"bend 90 deg: at 1 of 3 stations only the sheet's own lever presses on the nose, "
                                     "by 19.0 N/mm, without clamping reserve; it is open by up to 0.100 mm, at "
                                     "1 of 3 by more than the limit"});
  f.steps[1].bend_line.lifted[1] = false;
  f.steps[1].bend_line.clamp_force[1] = 0;
  EXPECT_EQ(hold_words(f, {}), std::vector<std::string>{"bend 90 deg: at 1 of 3 stations the nose does not press on "
                                                        "the sheet; it is open by up to 0.100 mm"});
  f.steps[1].bend_line.clamp_reserve[1] = 1;
  EXPECT_TRUE(hold_words(f, {}).empty());
}

TEST(Report, AnswerNamesTheFirstReason) {
  Findings f = test::findings();
  const Reason clamp{Failure::bows, "clamp", "bow", 0.4e-3, 0.25e-3, ReasonOf::length, "bend 0 deg"};
  const Reason bed{Failure::bows, "bed", "bow", 0.3e-3, 0.25e-3, ReasonOf::length, "bend 0 deg"};
  f.verdict = {false, {clamp, bed}};
  EXPECT_EQ(solve_answer(a_case(), f),
            "A limit is exceeded: clamp bows 0.400 mm in step bend 0 deg, limit 0.250 mm, and 1 more below.");
  // Read on the page only, the second reason was nowhere to be found.
  const std::string page = report_html(solve_report(a_case(), f, {}));
  EXPECT_NE(page.find("<li>bed bows 0.300 mm in step bend 0 deg, limit 0.250 mm</li>"), std::string::npos);
  f.verdict = {};
  Case c = a_case();
  c.machine.limits = {};
  EXPECT_TRUE(solve_answer(c, f).starts_with("No limit is set: ")) << solve_answer(c, f);
  c.machine.limits.bow = 1;
  EXPECT_TRUE(solve_answer(c, f).starts_with("Within the limits: "));
}

TEST(Report, ForeignTextStaysText) {
  Report r{"<script>alert(1)</script>"};
  r.answer = "a & b";
  r.warnings = {"</li><img src=x>"};
  Plot plot{"</script>", "x", "y"};
  plot.series.push_back({"</script><!--", {0, 1}, {0, std::nan("")}});
  r.sections.push_back({"s", {}, {}, {plot}});
  const std::string html = report_html(r);
  EXPECT_EQ(html.find("<script>alert"), std::string::npos);
  EXPECT_EQ(html.find("<img src=x"), std::string::npos);
  const std::string data = report_data(r);
  EXPECT_EQ(data.find('<'), std::string::npos);
  const auto json = nlohmann::json::parse(data);
  EXPECT_EQ(json["plots"][0]["series"][0]["name"], "</script><!--");
  EXPECT_TRUE(json["plots"][0]["series"][0]["y"][1].is_null());
}

TEST(Report, NothingIsFetched) {
  const std::string html = report_html(solve_report(a_case(), test::findings(), {}));
  for (const char* tag : {"<link", " src=\"", "@import", "url("}) EXPECT_EQ(html.find(tag), std::string::npos) << tag;
  EXPECT_NE(html.find("default-src 'none'"), std::string::npos);
}

TEST(Report, ScenesShareOneMeshAndKeepTheirNumbers) {
  const Findings f = test::findings();
  const auto data = nlohmann::json::parse(report_data(solve_report(a_case(), f, {})));
  ASSERT_EQ(data["scenes"].size(), f.steps.size());
  EXPECT_EQ(data["meshes"].size(), 1U);
  for (std::size_t i = 0; i < f.steps.size(); ++i) {
    const auto& facts = data["scenes"][i]["facts"];
    EXPECT_EQ(data["scenes"][i]["name"], i == 0 ? "clamped" : f.steps[i].name); // people read "clamped"
    for (const BarResult& b : f.steps[i].bars)
      EXPECT_EQ(facts[b.name][0][1], in_unit(b.stress, OutputUnit{"MPa", 1e6}, 1e5) + " MPa") << b.name;
  }
}

TEST(Report, AFrameHasNoBendLine) {
  const Findings f = test::frame_findings();
  Case c;
  const Report r = solve_report(c, f, {});
  for (const ReportSection& s : r.sections) EXPECT_TRUE(s.plots.empty());
  EXPECT_NE(report_html(r).find("id=\"machine\""), std::string::npos);
}

} // namespace

} // namespace bedbow
