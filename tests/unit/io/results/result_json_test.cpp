#include "io/results/result_json.h"
#include "io/text/json_text.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace bedbow {
using Json = nlohmann::json;

namespace {

Json written(const Findings& f) {
  return Json::parse(json_text(result_json(f, {"1.2.3", "abc", {"plug 1.0"}})));
}

/// Every key of `wanted` is in `has`, with a value of the same kind; lists are compared by their first entries.
void expect_keys(const Json& wanted, const Json& has, const std::string& where) {
  if (wanted.is_object()) {
    ASSERT_TRUE(has.is_object()) << where;
    for (const auto& [key, value] : wanted.items()) {
      ASSERT_TRUE(has.contains(key)) << where << "." << key;
      expect_keys(value, has[key], where + "." + key);
    }
  } else if (wanted.is_array()) {
    ASSERT_TRUE(has.is_array()) << where;
    if (!wanted.empty() && !has.empty()) expect_keys(wanted[0], has[0], where + "[0]");
  } else if (!has.is_null()) {
    EXPECT_EQ(wanted.is_number(), has.is_number()) << where;
  }
}

// The published contract of results.json, as scripts of others rely on it.
const char* const contract = R"({"title": "", "version": "", "status": "ok",
 "checks": {"equilibrium": 1e-13, "residual": 1e-13, "contact_iterations": 3},
 "sheet": {"moment_N_mm_per_mm": 0, "apron_N_per_mm": 0, "grip_N_per_mm": 0, "springback_deg": 0},
 "steps": [{"name": "clamp", "angle_deg": 0,
   "bow": {"clamp_mm": 0, "bed_mm": 0, "apron_mm": 0, "clamp_straightness_mm": 0, "angle_mean_deg": 0,
           "angle_spread_deg": 0},
   "bend_line": {"x_mm": [], "nose_y_mm": [], "nose_z_mm": [], "bed_z_mm": [], "apron_n_mm": [],
                 "angle_deviation_deg": [], "clamp_N_per_mm": [], "lifted": [],
                 "clamp_reserve_N_per_mm": [], "nose_opening_mm": []},
   "bars": [{"name": "clamp.spine", "stress_MPa": 0, "at_x_mm": 0, "utilisation": 0}],
   "posts": [{"name": "left", "force_N": 0, "utilisation": 0}],
   "cams": [], "hinges": [], "screws": [], "supports": [],
   "dials": {"mid": {"x_mm": 0, "y_mm": 0, "z_mm": 0}}}],
 "verdict": {"pass": true, "reasons": []},
 "modes": {"frequencies_Hz": [], "buckling_factors": []}})";

TEST(ResultJson, HasEveryKeyOfTheContract) {
  expect_keys(Json::parse(contract), written(test::findings()), "results");
}

// "0.055 kN" for 54.6 N m: what a handle takes is a moment, and no force is made up where its reach is unknown. Nor is
// a mass of 0 kg where a density is.
TEST(ResultJson, UnknownForceOfAHandleAndUnknownMassAreNull) {
  Findings f = test::findings();
  JointResult handle;
  handle.kind = JointKind::handle;
  handle.name = "left";
  handle.value = f.mass = std::nan("");
  handle.more = {{"moment", Quantity::moment, 54.6}};
  f.steps[1].joints.push_back(handle);
  const Json j = written(f);
  EXPECT_EQ(j["steps"][1]["handles"][0]["moment_Nm"], 54.6);
  EXPECT_TRUE(j["steps"][1]["handles"][0]["force_N"].is_null());
  EXPECT_TRUE(j["mass_kg"].is_null());
}

TEST(ResultJson, NumbersAreInFileUnits) {
  const Json j = written(test::findings());
  EXPECT_EQ(j["sheet"]["moment_N_mm_per_mm"], 200);
  EXPECT_EQ(j["sheet"]["apron_N_per_mm"], 8);
  EXPECT_EQ(j["sheet"]["springback_deg"], 2);
  const Json& bend = j["steps"][1];
  EXPECT_EQ(bend["angle_deg"], 90);
  EXPECT_EQ(bend["bow"]["bed_mm"], 0.02);
  EXPECT_EQ(bend["bow"]["clamp_mm"], 0.04);
  EXPECT_EQ(bend["bow"]["apron_mm"], 0.06);
  EXPECT_EQ(bend["bow"]["angle_spread_deg"], 0.75);
  EXPECT_EQ(bend["bend_line"]["x_mm"], Json({150, 450, 750}));
  EXPECT_EQ(bend["bend_line"]["lifted"], Json({false, true, false}));
  EXPECT_EQ(bend["bend_line"]["clamp_N_per_mm"], Json({27, 19, 27}));
  EXPECT_EQ(bend["bend_line"]["clamp_reserve_N_per_mm"], Json({8, 0, 8}));
  EXPECT_EQ(bend["bend_line"]["nose_opening_mm"], Json({0, 0.1, 0}));
  EXPECT_EQ(bend["bars"][0]["stress_MPa"], 100);
  EXPECT_EQ(bend["bars"][0]["at_section_mm"], Json({15, -40}));
  EXPECT_EQ(bend["bars"][0]["moments_N_mm"], Json({0, 1e6, 0}));
  EXPECT_EQ(bend["posts"][0]["force_N"], 10000);
  EXPECT_EQ(bend["posts"][0]["preload_loss_N"], 250);
  EXPECT_EQ(bend["posts"][0]["bending_MPa"], 30);
  EXPECT_EQ(bend["cams"][0]["open"], true);
  EXPECT_EQ(bend["dials"]["mid"]["z_mm"], -0.2);
  EXPECT_EQ(j["worst_step"], "bend 90 deg");
  EXPECT_EQ(j["verdict"]["pass"], false);
}

TEST(ResultJson, StampSaysWhatMadeIt) {
  const Json j = written(test::findings());
  EXPECT_EQ(j["version"], "1.2.3");
  EXPECT_EQ(j["case_sha256"], "abc");
  EXPECT_EQ(j["plugins"], Json({"plug 1.0"}));
  EXPECT_EQ(j["solver"]["linear_solver"], "band");
}

TEST(ResultJson, ChecksAreTheWorstOfAllSteps) {
  const Json j = written(test::findings());
  EXPECT_EQ(j["checks"]["equilibrium"], 2e-13);
  EXPECT_EQ(j["checks"]["contact_iterations"], 3);
  EXPECT_EQ(j["steps"][0]["checks"]["equilibrium"], 1e-13);
}

TEST(ResultJson, FailedCheckIsNotHiddenByOneThatHeld) {
  Findings f = test::findings();
  f.steps[0].checks.residual = std::nan("");
  EXPECT_TRUE(written(f)["checks"]["residual"].is_null());
}

TEST(ResultJson, WhatHasNoMeaningIsNull) {
  const Json clamp = written(test::findings())["steps"][0];
  EXPECT_TRUE(clamp["bow"]["angle_spread_deg"].is_null());
  EXPECT_EQ(clamp["bend_line"]["apron_n_mm"], Json({nullptr, nullptr, nullptr}));
}

TEST(ResultJson, NoSheetNoSheetKey) {
  const Json j = written(test::frame_findings());
  EXPECT_FALSE(j.contains("sheet"));
  ASSERT_EQ(j["steps"].size(), 1U);
  EXPECT_EQ(j["steps"][0]["name"], "load");
  EXPECT_EQ(j["steps"][0]["dials"]["tip"]["x_mm"], 1);
  EXPECT_TRUE(j["worst_step"].is_null());
}

TEST(ResultJson, TroubleIsTold) {
  Findings f;
  f.status = Status::mechanism;
  f.trouble = "clamp can slide along x";
  const Json j = written(f);
  EXPECT_EQ(j["status"], "mechanism");
  EXPECT_EQ(j["trouble"], "clamp can slide along x");
  EXPECT_FALSE(written(test::findings()).contains("trouble"));
}

TEST(ResultJson, ModesAndBuckling) {
  Findings f = test::findings();
  f.modes = ModesResult{{{41.5, "clamp rolls about x", {{"clamp", 0.75}}, {}}}, {3.5}, {}};
  const Json j = written(f);
  EXPECT_EQ(j["modes"]["frequencies_Hz"], Json({41.5}));
  EXPECT_EQ(j["modes"]["buckling_factors"], Json({3.5}));
  EXPECT_EQ(j["modes"]["shapes"][0]["strain_share"]["clamp"], 0.75);
}

TEST(ResultJson, BracketByLimit) {
  EXPECT_FALSE(written(test::findings()).contains("bracket"));
  Findings f = test::findings();
  f.slip_bounds.emplace();
  f.slip_bounds->no_slip.steps = {{"clamp", {{1e-3, 2e-3, 3e-3}, {}, 0, 0}, 90e6, {{"mid", {1e-3, 0, 0}}}}};
  f.slip_bounds->no_slip_rolling.steps = {{"clamp", {{1e-3, 5e-3, 3e-3}, {}, 0, 0}, 90e6, {}}};
  f.slip_bounds->no_shear.status = Status::mechanism;
  f.slip_bounds->no_shear.trouble = "bed.top can slide along y";
  const Json j = written(f)["bracket"];
  EXPECT_EQ(j["no_slip"]["status"], "ok");
  EXPECT_EQ(j["no_slip"]["steps"][0]["name"], "clamp");
  EXPECT_EQ(j["no_slip"]["steps"][0]["bow"]["clamp_mm"], 2);
  EXPECT_EQ(j["no_slip"]["steps"][0]["greatest_stress_MPa"], 90);
  EXPECT_EQ(j["no_slip"]["steps"][0]["dials"]["mid"]["x_mm"], 1);
  EXPECT_EQ(j["no_slip_rolling"]["steps"][0]["bow"]["clamp_mm"], 5);
  EXPECT_EQ(j["no_shear"]["trouble"], "bed.top can slide along y");
  EXPECT_TRUE(j["no_shear"]["steps"].empty());
}

TEST(ResultJson, RerunsAreTheSameToTheBit) {
  const RunStamp stamp{"1", "h", {}};
  EXPECT_EQ(json_text(result_json(test::findings(), stamp)), json_text(result_json(test::findings(), stamp)));
}

} // namespace

} // namespace bedbow
