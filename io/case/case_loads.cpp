#include "io/case/case_joint_parts.h"
#include "io/text/nearest.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace bedbow {

namespace {

/// A point, or a line. Reports both and neither.
void build_line(const CaseBuilder& b, const CaseValues& in, Eigen::Vector3d& from, Eigen::Vector3d& to) {
  const bool line = in.given("from") || in.given("to");
  if (in.given("at") && line) b.wrong(in, "at", "give either a point `at`, or a line `from` and `to`");
  if (line)
    for (const char* key : {"from", "to"})
      if (!in.given(key)) b.missing(in, key, "a line needs both `from` and `to`");
  if (!in.given("at") && !line) b.missing(in, "at", "a point, or a line `from` and `to`");
  from = in.vector3(line ? "from" : "at");
  to = in.vector3(line ? "to" : "at");
}

/// Index of the set of the mesh's points that `points` names; -1 where there is none, which is reported.
int set_of(const CaseBuilder& b, const CaseValues& in) {
  const auto name = in.text("points");
  if (!name) return -1;
  const UserMesh& own = b.machine().own;
  if (b.machine().own_pos.line > 0 && !own.present()) return -1; // the mesh's own errors have been reported
  std::vector<std::string> names;
  for (const PointSet& s : own.sets) names.push_back(s.name);
  const auto it = std::ranges::find(names, *name);
  if (it == names.end()) {
    b.wrong(in, "points",
            b.machine().own_pos.line == 0 ? "the case has no [mesh] with points to refer to"
            : names.empty()
                ? "the mesh has no point array of one number per point"
                : "the mesh has no point array \"" + *name + "\"; nearest is \"" + nearest(*name, names) + "\"");
    return -1;
  }
  const PointSet& set = own.sets[static_cast<std::size_t>(it - names.begin())];
  if (set.points.empty()) {
    b.wrong(in, "points", "the point array \"" + *name + "\" is 0 on every point");
    return -1;
  }
  return static_cast<int>(it - names.begin());
}

void build_hold(const CaseBuilder& b, const CaseValues& in) {
  Hold h;
  h.pos = in.pos();
  h.holds = mask_of(in.texts("holds"));
  if (in.given("points")) {
    for (const char* key : {"at", "from", "to"})
      if (in.given(key)) b.wrong(in, key, "give either a place, or `points` of the mesh");
    h.from = h.to = Eigen::Vector3d::Constant(left_out);
    h.set = set_of(b, in);
    b.machine().holds.push_back(h);
    return;
  }
  build_line(b, in, h.from, h.to);
  b.machine().holds.push_back(h);
}

/// Reports keys that do not belong to the kind of load.
void refuse(const CaseBuilder& b, const CaseValues& in, std::initializer_list<const char*> keys,
            const std::string& why) {
  for (const char* key : keys)
    if (in.given(key)) b.wrong(in, key, why);
}

void pressure_load(const CaseBuilder& b, const CaseValues& in, Load& load) {
  load.kind = Load::Kind::pressure;
  load.pressure = in.number_or_nan("pressure");
  const bool on_mesh = in.text("on").value_or("").starts_with("mesh") && !in.given("panel");
  if (!in.given("pressure")) b.missing(in, "pressure", "a pressure load needs both `panel` and `pressure`");
  if (!in.given("panel") && !on_mesh)
    b.missing(in, "panel", "a pressure load needs both `panel` and `pressure`, or `on` = a part of the mesh");
  refuse(b, in, {"at", "force", "moment", "from", "to", "per_length", "points"},
         "this load is a pressure on a panel; give other loads in a separate [[load]]");
  if (on_mesh) {
    load.on = ref_of(b, in, "on");
    return;
  }
  refuse(b, in, {"on"}, "this load is a pressure on a panel; give other loads in a separate [[load]]");
  const auto name = in.text("panel");
  if (!name) return;
  const auto& panels = b.machine().panels;
  const auto it = std::ranges::find(panels, *name, &Panel::name);
  if (it != panels.end()) {
    load.panel = static_cast<int>(it - panels.begin());
    return;
  }
  std::vector<std::string> names;
  for (const Panel& p : panels) names.push_back(p.name);
  b.wrong(in, "panel",
          "there is no panel \"" + *name + "\"" +
              (names.empty() ? "" : "; nearest is \"" + nearest(*name, names) + "\""));
}

/// A missing component is zero.
Eigen::Vector3d vector_or_zero(const CaseValues& in, std::string_view key) {
  return in.given(key) ? in.vector3(key) : Eigen::Vector3d::Zero();
}

void placed_load(const CaseBuilder& b, const CaseValues& in, Load& load) {
  build_line(b, in, load.from, load.to);
  load.on = ref_of(b, in, "on");
  if (load.on.kind == Ref::Kind::ground) b.wrong(in, "on", "a load on the ground has no effect");
  if (in.given("from") || in.given("to")) {
    load.kind = Load::Kind::line;
    load.force = vector_or_zero(in, "per_length");
    if (!in.given("per_length")) b.missing(in, "per_length", "the force per length along the line");
    refuse(b, in, {"force", "moment"}, "along a line the load is `per_length`");
    return;
  }
  load.kind = Load::Kind::point;
  load.force = vector_or_zero(in, "force");
  load.moment = vector_or_zero(in, "moment");
  if (!in.given("force") && !in.given("moment")) b.missing(in, "force", "the force, or a moment, at the point");
  refuse(b, in, {"per_length"}, "a load per length needs a line: `from` and `to`");
}

void set_load(const CaseBuilder& b, const CaseValues& in, Load& load) {
  load.kind = Load::Kind::set;
  load.set = set_of(b, in);
  load.force = vector_or_zero(in, "force");
  load.moment = vector_or_zero(in, "moment");
  if (!in.given("force") && !in.given("moment"))
    b.missing(in, "force", "the force, or a moment, that the points share");
  refuse(b, in, {"on", "at", "from", "to", "per_length"}, "give either a place, or `points` of the mesh");
  if (load.set < 0) return;
  const PointSet& set = b.machine().own.sets[static_cast<std::size_t>(load.set)];
  if (std::ranges::any_of(set.shares, [](double s) { return !(s > 0) || !std::isfinite(s); }))
    b.wrong(in, "points",
            "a load is shared in proportion to the array's values, so all values of \"" + set.name +
                "\" must be finite and not negative");
}

void build_load(const CaseBuilder& b, const CaseValues& in) {
  if (in.flag_or("gravity", false)) b.machine().gravity = true;
  bool only_gravity = in.given("gravity");
  for (const auto& [key, value] : in.all()) only_gravity = only_gravity && (key == "gravity" || key == "name");
  if (only_gravity) return;
  Load load;
  load.pos = in.pos();
  if (in.given("panel") || in.given("pressure"))
    pressure_load(b, in, load);
  else if (in.given("points"))
    set_load(b, in, load);
  else
    placed_load(b, in, load);
  b.machine().loads.push_back(load);
}

void build_dial(const CaseBuilder& b, const CaseValues& in) {
  Dial d;
  d.pos = in.pos();
  d.name = in.text("name").value_or("");
  d.on = ref_of(b, in, "on");
  if (d.on.kind == Ref::Kind::ground) b.wrong(in, "on", "a dial on the ground reads nothing");
  d.at = in.vector3("at");
  d.reading = in.number("reading");
  if (const auto axis = in.text("direction")) d.direction = chosen(axis_choices, *axis);
  if (in.given("reading") && !in.given("direction"))
    b.missing(in, "direction", "along which axis the reading was taken: \"x\", \"y\" or \"z\"");
  b.machine().dials.push_back(std::move(d));
}

} // namespace

void build_loads(const CaseBuilder& b) {
  b.machine().gravity = b.root.flag_or("gravity", false);
  for (const CaseValues& in : b.root.tables("hold")) build_hold(b, in);
  for (const CaseValues& in : b.root.tables("load")) build_load(b, in);
  for (const CaseValues& in : b.root.tables("dial")) build_dial(b, in);
}

} // namespace bedbow
