#include "tests/support/as_beams.h"

#include <algorithm>
#include <fstream>
#include <regex>
#include <sstream>
#include <stdexcept>
#include <vector>

namespace bedbow::test {

std::string as_beams(const std::string& text) {
  static const std::regex heading(R"(^\s*\[)"), bar(R"(^\[\[(bed|clamp|apron)\.bar\]\])"), model(R"(^\s*model\s*=)");
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  std::string out;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    out += lines[i] + "\n";
    if (!std::regex_search(lines[i], bar)) continue;
    std::size_t end = i + 1;
    while (end < lines.size() && !std::regex_search(lines[end], heading)) ++end;
    const auto given = [&](const std::string& line) { return std::regex_search(line, model); };
    if (std::none_of(lines.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                     lines.begin() + static_cast<std::ptrdiff_t>(end), given))
      out += "model = \"beam\"\n";
  }
  return out;
}

std::string shipped_case(const std::string& name) {
  const std::string file = BEDBOW_SOURCE_DIR "/cases/" + name + "/case.toml";
  std::ostringstream text;
  if (std::ifstream in(file); !(text << in.rdbuf())) throw std::runtime_error("can't read " + file);
  return text.str();
}

} // namespace bedbow::test
