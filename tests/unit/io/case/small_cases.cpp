#include "tests/unit/io/case/small_cases.h"

#include "io/files/errors.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow::test {

std::string bench(std::string_view more) {
  return R"([bed]
length = "900 mm"
material = "S275JR"
[[bed.bar]]
name = "web"
shape = "rectangle"
width = "20 mm"
height = "100 mm"
at = ["10 mm", "-50 mm"]
[[support]]
name = "left"
bar = "bed.web"
x = "0 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right"
bar = "bed.web"
x = "900 mm"
holds = ["y", "z", "rx"]
)" + std::string(more);
}

std::string folder(std::string_view more) {
  return R"([sheet]
material = "DC01"
thickness = "1 mm"
width = "400 mm"
centre = "350 mm"
flange = "20 mm"
inside_radius = "1.5 mm"
angle = "90 deg"
grip = "15 mm"
[bed]
length = "700 mm"
material = "S235JR"
[[bed.bar]]
name = "square"
shape = "rectangle"
width = "60 mm"
height = "60 mm"
at = ["30 mm", "-30 mm"]
[clamp]
length = "700 mm"
material = "S235JR"
nose = { land = "15 mm" }
[[clamp.bar]]
name = "flat"
shape = "rectangle"
width = "60 mm"
height = "60 mm"
at = ["32.5 mm", "31 mm"]
[apron]
length = "700 mm"
material = "S235JR"
[[apron.bar]]
name = "flat"
shape = "rectangle"
width = "50 mm"
height = "50 mm"
at = ["-26 mm", "-25 mm"]
[[support]]
name = "left foot"
bar = "bed.square"
x = "100 mm"
holds = ["x", "y", "z", "rx"]
[[support]]
name = "right foot"
bar = "bed.square"
x = "600 mm"
holds = ["y", "z", "rx"]
)" + std::string(more);
}

Case read(const std::string& text) {
  try {
    return read_case_text(text, builtin_registries());
  } catch (const CaseError& e) {
    for (const Problem& p : e.problems())
      if (p.severity == Severity::error) ADD_FAILURE() << to_string(p, "case");
    throw;
  }
}

Machine machine(const std::string& text) {
  return read(text).machine;
}

void expect_error(const std::string& before, const std::string& more, int line, const std::string& key,
                  const std::vector<std::string>& words) {
  const int due = static_cast<int>(std::ranges::count(before, '\n')) + line;
  std::string all;
  try {
    read_case_text(before + more, builtin_registries());
  } catch (const CaseError& e) {
    for (const Problem& p : e.problems()) {
      all += to_string(p, "case") + "\n";
      const auto said = [&](const std::string& w) { return p.text.find(w) != std::string::npos; };
      if (p.severity == Severity::error && p.key == key && p.pos.line == due && std::ranges::all_of(words, said))
        return;
    }
  }
  ADD_FAILURE() << "no such error at " << key << " in line " << due << " (" << line << " of the added ones); found:\n"
                << all;
}

} // namespace bedbow::test
