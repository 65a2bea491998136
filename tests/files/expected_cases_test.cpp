// Every case in cases/ is held to its expected.toml, and teaches: a README with its command and a what if.
#include "io/case/case_reader.h"
#include "io/case/toml_source.h"
#include "io/results/result_json.h"
#include "solver/analysis.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

namespace fs = std::filesystem;
using namespace bedbow;

namespace {

using Json = nlohmann::ordered_json;

std::string text_of(const fs::path& file) {
  std::ifstream in(file);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// What stands at "steps/bend 0 deg/bow/clamp_mm": keys of objects, names of what an array holds.
const Json& at(const Json& root, const std::string& path) {
  const Json* here = &root;
  std::istringstream parts(path);
  for (std::string part; std::getline(parts, part, '/');) {
    if (here->is_array()) {
      const auto found = std::ranges::find_if(*here, [&](const Json& j) { return j.at("name") == part; });
      if (found == here->end()) throw std::out_of_range("nothing in results.json at " + path);
      here = &*found;
    } else {
      here = &here->at(part);
    }
  }
  return *here;
}

const CaseNode& key(const CaseNode& table, const std::string& name) {
  const CaseNode* found = table.find(name);
  if (!found) throw std::out_of_range("expected.toml misses " + name);
  return *found;
}

void hold_to(const CaseNode& figure, const Json& results) {
  const double value = key(figure, "value").number, tolerance = key(figure, "tolerance").number;
  const std::string place = key(figure, "at").text, what = key(figure, "what").text;
  EXPECT_GT(tolerance, 0) << what;
  EXPECT_LE(tolerance, 0.05) << what << ": too wide to hold anything";
  ASSERT_NE(value, 0) << what << ": a relative tolerance of nothing";
  EXPECT_NEAR(at(results, place).get<double>() / value, 1, tolerance) << what << " (" << place << ")";
}

class ExpectedCase : public ::testing::TestWithParam<fs::path> {};

TEST_P(ExpectedCase, HoldsItsFigures) {
  const fs::path folder = GetParam();
  const Registries registries = builtin_registries();
  const Case c = read_case(folder / "case.toml", registries);
  AnalysisOptions options;
  options.slip_bounds = true; // as the command does
  const Findings f = analyse(c.machine, registries, options);
  ASSERT_EQ(f.status, Status::ok) << f.trouble;
  const Json results = result_json(f, {});
  const TomlText expected = read_toml(text_of(folder / "expected.toml"));
  ASSERT_TRUE(expected.problems.empty());
  EXPECT_EQ(f.verdict.pass ? 0 : 1, key(expected.root, "exit_status").number);
  const CaseNode& figures = key(expected.root, "figure");
  EXPECT_GE(figures.items.size(), 3U) << "too few to hold a case to";
  for (const CaseNode& figure : figures.items) hold_to(figure, results);
}

TEST_P(ExpectedCase, Teaches) {
  const fs::path folder = GetParam();
  const std::string readme = text_of(folder / "README.md"), name = folder.filename();
  for (const std::string& part :
       {std::string("# "), std::string("hat if"), std::string("nvented"), "cases/" + name + "/case.toml"})
    EXPECT_NE(readme.find(part), std::string::npos) << name << "/README.md lacks: " << part;
}

std::vector<fs::path> all_cases() {
  std::vector<fs::path> out;
  for (const auto& e : fs::directory_iterator(BEDBOW_SOURCE_DIR "/cases"))
    if (e.is_directory()) out.push_back(e.path());
  std::ranges::sort(out);
  return out;
}

INSTANTIATE_TEST_SUITE_P(Cases, ExpectedCase, ::testing::ValuesIn(all_cases()), [](const auto& info) {
  std::string name = info.param.filename();
  std::ranges::replace(name, '-', '_');
  return name;
});

} // namespace
