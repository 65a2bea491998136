#include "tools/bedbow/support/output_place.h"

#include "io/units/quantity.h"

#include <stdexcept>

namespace bedbow {

std::filesystem::path output_directory(const std::string& wanted, const std::filesystem::path& file) {
  if (!wanted.empty()) return wanted;
  const auto name = file.filename() == "case.toml" && file.has_parent_path()
                        ? std::filesystem::absolute(file).lexically_normal().parent_path().filename()
                        : file.stem();
  return std::filesystem::path("out") / name;
}

const std::vector<std::string>& optional_files() {
  static const std::vector<std::string> names{"report.html",        "bow.svg",       "bow_clamp.svg",
                                              "bow_bed.svg",        "bow_apron.svg", "clamp_pressure.svg",
                                              "angle_deviation.svg"};
  return names;
}

std::vector<double> lengths_of(const std::string& option, const std::vector<std::string>& texts) {
  std::vector<double> out;
  for (const std::string& text : texts) {
    const ParsedQuantity q = parse_quantity(text, Dim::length);
    if (!q.ok()) throw std::invalid_argument("--" + option + ": " + q.trouble);
    out.push_back(q.value);
  }
  return out;
}

} // namespace bedbow
