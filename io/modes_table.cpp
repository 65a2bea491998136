#include "io/modes_table.h"

#include "io/output_units.h"
#include "io/table.h"
#include "io/text.h"

#include <algorithm>
#include <vector>

namespace bedbow {

namespace {

constexpr std::size_t widest_movement = 42, widest_body = 14;

std::string cut(std::string text, std::size_t widest) {
  text = printable(text);
  return text.size() <= widest ? text : text.substr(0, widest - 3) + "...";
}

/// The two bodies that hold most of the strain energy.
std::string strained(const ModeShape& m) {
  std::vector<std::pair<std::string, double>> shares(m.strain_share.begin(), m.strain_share.end());
  std::stable_sort(shares.begin(), shares.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  std::string out;
  for (std::size_t i = 0; i < shares.size() && i < 2; ++i)
    if (shares[i].second >= 0.05)
      out +=
          (out.empty() ? "" : ", ") + cut(shares[i].first, widest_body) + " " + fixed(shares[i].second * 100, 0) + " %";
  return out.empty() ? "-" : out;
}

std::string table_of(const std::vector<ModeShape>& shapes, const char* head, int digits, const Style& style) {
  TextTable t({{""}, {head}, {"what moves", Align::left}, {"strained", Align::left}});
  for (std::size_t i = 0; i < shapes.size(); ++i)
    t.row({std::to_string(i + 1), fixed(shapes[i].frequency, digits), cut(shapes[i].description, widest_movement),
           strained(shapes[i])});
  return t.render(style);
}

} // namespace

std::string modes_table(const ModesResult& m, const Style& style) {
  std::string out;
  if (!m.modes.empty())
    out += "Natural frequencies, joints as in: " + m.joint_state + "\n" + table_of(m.modes, "Hz", 2, style);
  if (m.buckling_step.empty()) return out;
  out += (out.empty() ? "" : "\n") + std::string("Buckling under the loads of step ") + m.buckling_step + "\n";
  return out + (m.buckling_shapes.empty() ? "  nothing buckles: these loads press nothing together\n"
                                          : table_of(m.buckling_shapes, "times load", 2, style));
}

} // namespace bedbow
