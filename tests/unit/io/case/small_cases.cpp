#include "tests/unit/io/case/small_cases.h"

#include "io/files/errors.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace bedbow::test {

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
