#include "io/results/modes_table.h"

#include "io/text/text.h"
#include "io/units/output_units.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace bedbow {

namespace {

constexpr std::size_t widest_movement = 42, widest_strain = 34;

std::string cut(std::string text, std::size_t widest) {
  text = printable(text);
  return text.size() <= widest ? text : text.substr(0, widest - 3) + "...";
}

std::string table_of(const std::vector<ModeShape>& shapes, const char* head, const Style& style) {
  TextTable t = shape_table({}, head);
  for (std::size_t i = 0; i < shapes.size(); ++i)
    t.row({std::to_string(i + 1), fixed(shapes[i].frequency, 2), cut(shapes[i].description, widest_movement),
           cut(strained_most(shapes[i], 2), widest_strain)});
  return t.render(style);
}

} // namespace

TextTable shape_table(const std::vector<ModeShape>& shapes, const std::string& head) {
  TextTable t({{""}, {head}, {"what moves", Align::left}, {"strained", Align::left}});
  for (std::size_t i = 0; i < shapes.size(); ++i)
    t.row({std::to_string(i + 1), fixed(shapes[i].frequency, 2), shapes[i].description, strained_most(shapes[i], 3)});
  return t;
}

std::string strained_most(const ModeShape& m, std::size_t most) {
  std::vector<std::pair<std::string, double>> shares(m.strain_share.begin(), m.strain_share.end());
  std::stable_sort(shares.begin(), shares.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
  std::string out;
  for (std::size_t i = 0; i < shares.size() && i < most && shares[i].second >= 0.05; ++i)
    out += (i > 0 ? ", " : "") + shares[i].first + " " + fixed(shares[i].second * 100, 0) + " %";
  return out.empty() ? "-" : out;
}

std::string modes_table(const ModesResult& m, const Style& style) {
  std::string out;
  if (!m.modes.empty())
    out += "Natural frequencies, joints as in: " + m.joint_state + "\n" + table_of(m.modes, "Hz", style);
  if (m.buckling_step.empty()) return out;
  out += (out.empty() ? "" : "\n") + std::string("Buckling under the loads of step ") + m.buckling_step + "\n";
  return out +
         (m.buckling_shapes.empty() ? "  " + m.buckling_note + "\n" : table_of(m.buckling_shapes, "times load", style));
}

} // namespace bedbow
