// What the built program prints is what it writes into results.json, in the units of [output], for every case.
#include "mesh/machine/joint_kind.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>
#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <vector>

namespace fs = std::filesystem;
using Json = nlohmann::json;

namespace {

using Row = std::vector<std::string>;

/// Cells of a printed line: two spaces or more part them.
Row cells(const std::string& line) {
  Row out;
  std::size_t i = 0;
  while (i < line.size()) {
    if (line[i] == ' ') {
      ++i;
      continue;
    }
    const std::size_t end = std::min(line.find("  ", i), line.size());
    out.push_back(line.substr(i, end - i));
    i = end;
  }
  return out;
}

/// Rows of the table under a line that begins with `title`, without its head, up to the next empty or unindented line.
std::vector<Row> table(const std::string& printed, const std::string& title) {
  std::istringstream lines(printed);
  std::vector<Row> rows;
  bool inside = false;
  for (std::string line; std::getline(lines, line);) {
    if (inside && !line.starts_with("  ")) break;
    if (inside) rows.push_back(cells(line));
    if (line.starts_with(title)) inside = true;
  }
  if (!rows.empty()) rows.erase(rows.begin());
  return rows;
}

/// The number that stands at the beginning of a cell is the value, as far as its digits go.
void expect_shown(const std::string& cell, const Json& value, double unit, const std::string& what) {
  if (value.is_null()) {
    EXPECT_EQ(cell, "-") << what;
    return;
  }
  const std::string number = cell.substr(0, cell.find_first_not_of("-0123456789."));
  ASSERT_FALSE(number.empty()) << what << ": " << cell;
  const std::size_t point = number.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(number.size() - point - 1);
  EXPECT_NEAR(std::stod(number), value.get<double>() / unit, 0.5001 * std::pow(10, -decimals)) << what << ": " << cell;
}

/// Sizes of the printed units, in those of results.json: mm, N, MPa.
struct Units {
  double length = 1, force = 1000, stress = 1;
};

struct Solved {
  std::string printed;
  Json results;
  Units units;
};

class PrintedTable : public ::testing::Test {
protected:
  PrintedTable() {
    dir = fs::temp_directory_path() / ("bedbow-table-" + std::to_string(::getpid()));
    fs::create_directories(dir);
  }
  ~PrintedTable() override { fs::remove_all(dir); }

  [[nodiscard]] Solved solve(const fs::path& file, const Units& units) const {
    Solved run{"", {}, units};
    const std::string command =
        "'" BEDBOW_PROGRAM "' solve '" + file.string() + "' --out '" + (dir / "out").string() + "' 2>&1";
    std::FILE* pipe = ::popen(command.c_str(), "r");
    std::array<char, 4096> part{};
    while (std::fgets(part.data(), static_cast<int>(part.size()), pipe)) run.printed += part.data();
    const int status = ::pclose(pipe);
    EXPECT_TRUE(WEXITSTATUS(status) <= 1) << run.printed;
    std::ifstream(dir / "out" / "results.json") >> run.results;
    return run;
  }
  fs::path dir;
};

/// A step by its name in the file, or by what people read for it.
const Json& step_of(const Json& results, const std::string& name) {
  for (const Json& s : results.at("steps"))
    if (s.at("name") == name || (name == "clamped" && s.at("name") == "clamp")) return s;
  throw std::out_of_range("no step " + name);
}

void compare_bows(const Solved& run) {
  if (!run.results.contains("sheet")) return;
  const auto rows = table(run.printed, "Bow over the sheet width");
  ASSERT_EQ(rows.size(), run.results.at("steps").size());
  for (const Row& row : rows) {
    const Json& bow = step_of(run.results, row.at(0)).at("bow");
    expect_shown(row.at(1), bow.at("clamp_mm"), run.units.length, row[0] + " clamp bow");
    expect_shown(row.at(2), bow.at("bed_mm"), run.units.length, row[0] + " bed bow");
    expect_shown(row.at(3), bow.at("apron_mm"), run.units.length, row[0] + " apron bow");
    expect_shown(row.at(4), bow.at("angle_mean_deg"), 1, row[0] + " angle mean");
    expect_shown(row.at(5), bow.at("angle_spread_deg"), 1, row[0] + " angle spread");
    EXPECT_EQ(row.size() == 7, run.results.at("worst_step") == step_of(run.results, row[0]).at("name"));
  }
}

void compare_dials(const Solved& run) {
  std::size_t expected = 0;
  for (const Json& s : run.results.at("steps")) expected += s.at("dials").size();
  const auto rows = table(run.printed, "Dials");
  ASSERT_EQ(rows.size(), expected);
  for (const Row& row : rows) {
    const Json& dial = step_of(run.results, row.at(1)).at("dials").at(row.at(0));
    int column = 2;
    for (const char* axis : {"x_mm", "y_mm", "z_mm"})
      expect_shown(row.at(column++), dial.at(axis), run.units.length, row[0] + " " + axis);
  }
}

/// What the last table calls a thing, with its list in results.json and the key of its value.
struct Bearing {
  const char *list, *kind, *value;
};
std::vector<Bearing> bearings() {
  std::vector<Bearing> out{{"bars", "bar", "stress_MPa"}};
  for (const bedbow::JointKindInfo& k : bedbow::joint_kinds)
    if (k.part && k.quantity == bedbow::Quantity::force)
      out.push_back({k.plural, k.key, k.kind == bedbow::JointKind::hinge ? "across_N" : "force_N"});
  return out;
}

/// "post left", but "hinge 1" once where the name says already what it is.
std::string shown_as(const std::string& name, std::string kind) {
  return name.starts_with(kind) ? name : kind.append(" ").append(name);
}

/// What a thing bears in one step: by what list entry, how much, and how much of what it may bear that is.
struct Bears {
  double load = 0, used = 0;
};

Bears bears_in(const Json& step, const Bearing& b, const std::string& shown) {
  for (const Json& item : step.at(b.list))
    if (shown_as(item.at("name"), b.kind) == shown) return {item.at(b.value), item.value("utilisation", 0.0)};
  ADD_FAILURE() << shown << " is not in step " << step.at("name");
  return {};
}

/// The greatest load stands with its step, and so does the highest utilisation, which may be another one.
void compare_row(const Solved& run, const Bearing& b, const Row& row) {
  Bears most;
  for (const Json& s : run.results.at("steps")) {
    const Bears here = bears_in(s, b, row.at(0));
    most = {std::max(most.load, here.load), std::max(most.used, here.used)};
  }
  const bool stress = b.list == std::string("bars");
  expect_shown(row.at(1), most.load, stress ? run.units.stress : run.units.force, row[0]);
  // Steps that are equal to all digits of the file may stand for one another.
  EXPECT_GE(bears_in(step_of(run.results, row.at(2)), b, row[0]).load, most.load * (1 - 1e-8)) << row[0];
  if (most.used > 0) {
    expect_shown(row.at(3), most.used * 100, 1, row[0] + " used");
    EXPECT_GE(bears_in(step_of(run.results, row.back()), b, row[0]).used, most.used * (1 - 1e-8)) << row[0];
  } else {
    EXPECT_EQ(row.at(3), "-") << row[0];
  }
}

void compare_loads(const Solved& run) {
  std::map<std::string, Row> rows;
  for (const Row& row : table(run.printed, "Greatest load")) rows[row.at(0)] = row;
  std::set<std::string> things;
  for (const Bearing& b : bearings())
    for (const Json& s : run.results.at("steps"))
      for (const Json& item : s.at(b.list)) {
        const std::string shown = shown_as(item.at("name"), b.kind);
        if (!things.insert(shown).second) continue;
        ASSERT_TRUE(rows.contains(shown)) << shown;
        compare_row(run, b, rows[shown]);
      }
  EXPECT_EQ(rows.size(), things.size());
}

void compare_rest(const Solved& run) {
  const bool pass = run.results.at("verdict").at("pass");
  EXPECT_NE(run.printed.find(pass ? "Verdict: within the limits" : "Verdict: a limit is exceeded"), std::string::npos);
  char mass[64];
  std::snprintf(mass, sizeof mass, "panels: %.1f kg", run.results.at("mass_kg").get<double>());
  EXPECT_NE(run.printed.find(mass), std::string::npos) << mass;
  if (!run.results.contains("sheet")) return;
  const Json& sheet = run.results.at("sheet");
  char text[160];
  std::snprintf(text, sizeof text, "moment %.1f N mm/mm, apron push %.2f N/mm, grip %.2f N/mm, springback %.2f deg",
                sheet.at("moment_N_mm_per_mm").get<double>(), sheet.at("apron_N_per_mm").get<double>(),
                sheet.at("grip_N_per_mm").get<double>(), sheet.at("springback_deg").get<double>());
  EXPECT_NE(run.printed.find(text), std::string::npos) << text;
}

void compare(const Solved& run) {
  compare_bows(run);
  compare_dials(run);
  compare_loads(run);
  compare_rest(run);
}

TEST_F(PrintedTable, IsResultsJsonForEveryCase) {
  int count = 0;
  for (const auto& e : fs::directory_iterator(BEDBOW_SOURCE_DIR "/cases")) {
    if (!e.is_directory()) continue;
    SCOPED_TRACE(e.path().string());
    compare(solve(e.path() / "case.toml", {}));
    ++count;
  }
  EXPECT_GE(count, 4);
}

TEST_F(PrintedTable, FollowsTheUnitsOfTheCase) {
  std::ifstream in(BEDBOW_SOURCE_DIR "/cases/hive-lid/case.toml");
  std::ostringstream text;
  text << in.rdbuf() << R"([output]
length = "in"
force = "lbf"
stress = "ksi"
)";
  std::ofstream(dir / "inches.toml") << text.str();
  const Solved run = solve(dir / "inches.toml", {25.4, 4.4482216152605, 6.894757293168});
  EXPECT_NE(run.printed.find("width [in]"), std::string::npos);
  EXPECT_NE(run.printed.find(" lbf"), std::string::npos);
  EXPECT_NE(run.printed.find(" ksi"), std::string::npos);
  compare(run);
}

} // namespace
