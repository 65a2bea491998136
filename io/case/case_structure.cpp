#include "io/case/case_joint_parts.h"

#include <cmath>
#include <utility>

namespace bedbow {

namespace {

void build_member(const CaseBuilder& b, const CaseValues& in) {
  Member m;
  m.pos = in.pos();
  m.name = in.text("name").value_or("");
  m.from = in.vector3("from");
  m.to = in.vector3("to");
  m.material = material_of(b, in);
  const double nu = m.material >= 0 ? b.machine().materials[static_cast<std::size_t>(m.material)].nu : 0.3;
  m.shape = shape_of(b, in, std::isfinite(nu) ? nu : 0.3);
  m.up = in.vector3("up");
  if (const CaseValues* releases = in.table("releases")) {
    m.release_from = mask_of(releases->texts("from"));
    m.release_to = mask_of(releases->texts("to"));
  }
  m.tension_only = in.flag_or("tension_only", false);
  m.divisions = in.integer_or("divisions", m.divisions);
  m.element = element_of(b, in, 1);
  if (m.tension_only && !m.element.empty())
    b.wrong(in, "element", "a tension-only member is a rod without bending; omit one of the two");
  b.machine().members.push_back(std::move(m));
}

void build_panel(const CaseBuilder& b, const CaseValues& in) {
  Panel p;
  p.pos = in.pos();
  p.name = in.text("name").value_or("");
  p.corner = in.vector3("corner");
  p.edge_a = in.vector3("edge_a");
  p.edge_b = in.vector3("edge_b");
  p.thickness = in.number_or_nan("thickness");
  p.material = material_of(b, in);
  if (const auto n = in.numbers("divisions"); n.size() == 2)
    p.divisions = {static_cast<int>(n[0]), static_cast<int>(n[1])};
  p.element = element_of(b, in, 2);
  b.machine().panels.push_back(std::move(p));
}

} // namespace

void build_structure(const CaseBuilder& b) {
  for (const CaseValues& in : b.root.tables("member")) build_member(b, in);
  for (const CaseValues& in : b.root.tables("panel")) build_panel(b, in);
}

} // namespace bedbow
