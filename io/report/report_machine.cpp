#include "io/report/report_machine.h"

#include "io/results/result_tables.h"
#include "io/text/step_label.h"

#include <cmath>

namespace bedbow {

namespace {

std::vector<ReportFixture> fixtures(const Machine& m, const Findings& f) {
  std::vector<ReportFixture> out;
  if (f.steps.empty()) return out;
  const StepResult& step = f.steps.front();
  const Eigen::Vector3d x = Eigen::Vector3d::UnitX();
  const auto known = [](double v, double otherwise) { return std::isfinite(v) && v > 0 ? v : otherwise; };
  for (std::size_t i = 0; i < m.posts.size() && i < step.posts.size(); ++i)
    out.push_back({with_kind("post", step.posts[i].name), "post", step.posts[i].at, Eigen::Vector3d::UnitZ(),
                   m.posts[i].diameter, m.posts[i].free_length});
  for (std::size_t i = 0; i < m.cams.size() && i < step.cams.size(); ++i)
    out.push_back({with_kind("cam", step.cams[i].name), "cam", step.cams[i].at, x, 2 * known(m.cams[i].radius, 0.01),
                   known(m.cams[i].width, 0.015)});
  for (std::size_t i = 0; i < m.hinges.size() && i < step.hinges.size(); ++i)
    out.push_back({with_kind("hinge", step.hinges[i].name), "hinge", step.hinges[i].at, x,
                   known(m.hinges[i].pin, 0.012), known(m.hinges[i].bearing_length, 0.02)});
  return out;
}

void add_shapes(Report& r, const ModesResult& modes) {
  const auto add = [&](const ModeShape& m, bool buckling, const std::string& name) {
    if (m.fields.bars.empty() && m.fields.shells.empty()) return;
    r.scenes.push_back({name, ReportScene::Kind::mode, 0, &m.fields, shape_facts(m, buckling)});
  };
  int number = 0;
  for (const ModeShape& m : modes.modes)
    add(m, false,
        "mode " + std::to_string(++number) + ": " + fixed(m.frequency, 1) + " Hz" +
            (m.description.empty() ? "" : ", " + m.description));
  number = 0;
  for (const ModeShape& m : modes.buckling_shapes)
    add(m, true, "buckling " + std::to_string(++number) + ": factor " + fixed(m.frequency, 2));
}

} // namespace

void add_machine(Report& r, const Machine& machine, const Findings& f) {
  for (const StepResult& s : f.steps)
    r.scenes.push_back({step_label(s.name), ReportScene::Kind::step, s.angle, &s.fields, step_facts(s, r.units)});
  if (f.modes) add_shapes(r, *f.modes);
  r.first_scene = f.worst_step.value_or(0);
  r.fixtures = fixtures(machine, f);
  r.sheet = machine.sheet;
}

void add_case(Report& r, const Case& c, const Findings& f) {
  r.units = c.output;
  r.warnings = f.warnings;
  r.assumptions = f.assumptions;
  r.assumptions.insert(r.assumptions.end(), c.assumptions.begin(), c.assumptions.end());
}

} // namespace bedbow
