#include "mesh/machine/problem.h"

#include <algorithm>
#include <tuple>

namespace bedbow {

bool any_error(const std::vector<Problem>& problems) {
  return std::ranges::any_of(problems, [](const Problem& p) { return p.severity == Severity::error; });
}

std::string number_list(const std::vector<int>& numbers) {
  constexpr std::size_t shown = 8;
  std::string out;
  for (std::size_t i = 0; i < std::min(numbers.size(), shown); ++i)
    out.append(out.empty() ? "" : ", ").append(std::to_string(numbers[i]));
  if (numbers.size() > shown) out += " and " + std::to_string(numbers.size() - shown) + " more";
  return out;
}

void sort_by_place(std::vector<Problem>& problems) {
  std::ranges::stable_sort(problems, {}, [](const Problem& p) { return std::tuple(p.pos.line, p.pos.column); });
  const auto same = [](const Problem& a, const Problem& b) {
    return a.severity == b.severity && a.pos.line == b.pos.line && a.pos.column == b.pos.column && a.key == b.key &&
           a.text == b.text;
  };
  problems.erase(std::unique(problems.begin(), problems.end(), same), problems.end());
}

} // namespace bedbow
