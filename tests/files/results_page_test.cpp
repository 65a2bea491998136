// docs/results.md names every key of results.json, every column of bend_line.csv and every array of the .vtu files.
#include "io/case/case_reader.h"
#include "io/results/csv.h"
#include "io/results/result_json.h"
#include "io/vtk/vtk_grid.h"
#include "solver/analysis.h"

#include "tests/unit/support/findings_fixture.h"
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <set>
#include <sstream>

using namespace bedbow;

namespace {

using Json = nlohmann::ordered_json;

std::string page() {
  std::ifstream in(BEDBOW_SOURCE_DIR "/docs/results.md");
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Keys of all objects; under `dials` and `strain_share` they are names of the case's own.
void collect(const Json& json, std::set<std::string>& keys) {
  if (json.is_array())
    for (const Json& item : json) collect(item, keys);
  if (!json.is_object()) return;
  for (const auto& [key, value] : json.items()) {
    keys.insert(key);
    if (key == "dials" || key == "strain_share")
      for (const auto& [name, inner] : value.items()) collect(inner, keys);
    else
      collect(value, keys);
  }
}

void expect_named(const std::set<std::string>& keys) {
  const std::string text = page();
  for (const std::string& key : keys)
    EXPECT_NE(text.find("`" + key + "`"), std::string::npos) << "docs/results.md does not tell of " << key;
}

Findings hive_lid() {
  const Registries registries = builtin_registries();
  AnalysisOptions options;
  options.slip_bounds = true;
  return analyse(read_case(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml", registries).machine, registries, options);
}

TEST(ResultsPage, NamesEveryKeyOfResultsJson) {
  std::set<std::string> keys;
  collect(result_json(hive_lid(), {}), keys);
  collect(result_json(test::findings(), {}).at("modes"), keys); // the rest of the fixture is made up
  Findings failed;
  failed.status = Status::mechanism;
  collect(result_json(failed, {}), keys);
  EXPECT_GT(keys.size(), 60U);
  expect_named(keys);
}

TEST(ResultsPage, NamesEveryColumnOfTheCsv) {
  const std::string csv = bend_line_csv(hive_lid());
  std::istringstream head(csv.substr(0, csv.find('\n')));
  std::set<std::string> keys;
  for (std::string column; std::getline(head, column, ',');) keys.insert(column);
  EXPECT_EQ(keys.size(), 12U);
  expect_named(keys);
}

TEST(ResultsPage, NamesEveryArrayOfTheGrids) {
  std::set<std::string> keys;
  const StepResult step = test::findings().steps.at(0);
  for (const VtkGrid& grid : {surface_grid(step.fields, step.name), force_grid(step.fields.forces, step.name)}) {
    for (const VtkArray& a : grid.point_arrays) keys.insert(a.name);
    for (const VtkIndex& i : grid.cell_indices) keys.insert(i.name);
    for (const VtkNames& n : grid.fields) keys.insert(n.name);
  }
  expect_named(keys);
}

} // namespace
