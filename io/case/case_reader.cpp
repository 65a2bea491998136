#include "io/case/case_reader.h"

#include "io/case/case_builder.h"
#include "io/case/case_values.h"
#include "io/case/fault_text.h"
#include "io/files/errors.h"
#include "mesh/check/validate.h"
#include "mesh/machine/setback.h"
#include "solver/sheet/sheet_law.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace bedbow {

namespace {

/// Sizes of section shapes from plugins, which the schema does not name.
std::vector<std::string> plugin_sizes(const Registries& registries) {
  std::vector<std::string> out;
  for (const ShapeEntry& shape : registries.shapes.entries())
    out.insert(out.end(), shape.sizes.begin(), shape.sizes.end());
  return out;
}

std::string title_of(const CaseValues& root, const std::string& file) {
  return root.text("title").value_or(std::filesystem::path(file).stem().string());
}

/// Defaults worth reporting, such as "preload: a spring throughout", with the tables to which they apply.
void collect_defaults(const CaseValues& in, std::vector<std::pair<std::string, std::string>>& found) {
  for (const KeySpec& key : in.spec().keys) {
    if (!key.table.empty()) {
      for (const CaseValues& below : in.tables(key.key)) collect_defaults(below, found);
      continue;
    }
    if (!key.is_told || in.given(key.key)) continue;
    if (key.key == "y" && in.given("at")) continue;
    if (key.key == "on" && (in.given("panel") || in.given("gravity") || in.given("points"))) continue;
    if (key.key == "start" && in.given("starts")) continue;
    found.emplace_back(key.key + ": " + key.by_default, in.path());
  }
}

void tell_defaults(const CaseValues& root, Case& out) {
  std::vector<std::pair<std::string, std::string>> found;
  collect_defaults(root, found);
  std::vector<std::string> order;
  std::map<std::string, std::vector<std::string>> where;
  for (const auto& [what, path] : found) {
    if (!where.contains(what)) order.push_back(what);
    where[what].push_back(path);
  }
  for (const std::string& what : order) {
    std::string line;
    for (const std::string& path : where[what]) line.append(line.empty() ? "" : ", ").append(path);
    out.assumptions.push_back(line + ": " + what);
  }
}

/// Whether every table at the top of the file is of the right kind. Where one is not, messages about references to it
/// would only repeat that.
bool well_shaped(const CaseValues& root) {
  return std::ranges::none_of(root.spec().keys, [&](const KeySpec& key) {
    return !key.table.empty() && root.given(key.key) && !root.value(key.key);
  });
}

void build(const CaseBuilder& b) {
  build_bodies(b);
  build_structure(b);
  build_mesh(b);
  build_nose(b);
  build_sheet(b);
  build_joints(b);
  build_loads(b);
  build_settings(b);
  build_studies(b);
  check_unused_materials(b);
  if (Nose& nose = b.machine().nose; std::isnan(nose.setback)) nose.setback = default_setback(b.machine());
  b.problems.add(validate(b.machine(), b.registries.shapes, known_springback(b.machine(), b.registries.moment_laws)));
}

/// What can't be built as drawn is a warning: files that were read before are read still. Set-back and swing have been
/// reported by validate().
void warn_of_faults(const CaseBuilder& b, const OutputUnits& units) {
  const Springback springback = known_springback(b.machine(), b.registries.moment_laws);
  for (const Fault& f : buildable(b.machine(), b.registries.shapes, springback))
    if (f.kind != FaultKind::setback && f.kind != FaultKind::swing)
      b.problems.warning(f.pos, f.key, fault_text(f, units));
}

} // namespace

Case understand(CaseSource source, const Registries& registries) {
  Case out;
  out.source = std::move(source);
  out.text_hash = out.source.text_hash;
  ProblemList problems;
  problems.add(out.source.problems);
  // Where lines were skipped, keys that seem to be missing may be in them: only present keys can be checked.
  const bool whole = !any_error(out.source.problems);
  const CaseValues root = check_case(out.source.root, case_schema(), plugin_sizes(registries), whole, problems);
  if (whole && well_shaped(root)) {
    build({root, registries, problems, out});
    if (!any_error(problems.all())) warn_of_faults({root, registries, problems, out}, out.output);
    out.machine.title = title_of(root, out.source.file);
    tell_defaults(root, out);
  }
  std::vector<Problem> all = problems.take();
  sort_by_place(all);
  if (any_error(all)) throw CaseError(out.source.file, std::move(all));
  out.warnings = std::move(all);
  return out;
}

Case read_case(const std::filesystem::path& file, const Registries& registries) {
  return understand(read_source(file), registries);
}

Case read_case_text(std::string_view text, const Registries& registries, const std::string& file) {
  return understand(source_of_text(text, file), registries);
}

} // namespace bedbow
