#include "io/plugin/plugin_results.h"

#include "io/text/json_text.h"

#include <nlohmann/json.hpp>

#include <utility>

namespace bedbow {

void add_findings(const Plugins& plugins, const Findings& findings, nlohmann::ordered_json& json) {
  for (const FindingEntry& e : plugins.findings.entries()) {
    auto& values = json["findings"][e.name] = nlohmann::ordered_json::object();
    for (const auto& [key, value] : e.evaluate(findings)) values[key] = value;
  }
}

void add_written(const Plugins& plugins, const Findings& findings, const nlohmann::ordered_json& json,
                 std::vector<ResultFile>& more) {
  if (plugins.writers.entries().empty()) return;
  const std::string text = json_text(json);
  std::vector<std::string> taken = result_names(findings);
  for (const ResultFile& f : more) taken.push_back(f.name);
  for (const WriterEntry& writer : plugins.writers.entries())
    for (WrittenFile& file : writer.write(findings, text, taken)) {
      taken.push_back(file.name);
      more.push_back({std::move(file.name), std::move(file.content)});
    }
}

} // namespace bedbow
