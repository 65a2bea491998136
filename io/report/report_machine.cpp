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
  const auto add = [&](JointKind kind, const auto& list, const Eigen::Vector3d& axis, auto size) {
    const auto joints = joints_of(step, kind);
    for (std::size_t i = 0; i < list.size() && i < joints.size(); ++i) {
      const auto [diameter, length] = size(list[i]);
      out.push_back({with_kind(info(kind).key, joints[i].name), info(kind).key, joints[i].at, axis, diameter, length});
    }
  };
  add(JointKind::post, m.posts, Eigen::Vector3d::UnitZ(),
      [](const Post& p) { return std::pair(p.diameter, p.free_length); });
  add(JointKind::cam, m.cams, x,
      [&](const Cam& c) { return std::pair(2 * known(c.radius, 0.01), known(c.width, 0.015)); });
  add(JointKind::hinge, m.hinges, x,
      [&](const Hinge& h) { return std::pair(known(h.pin, 0.012), known(h.bearing_length, 0.02)); });
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

} // namespace bedbow
