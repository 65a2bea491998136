#include "io/case/case_joint_parts.h"

#include "mesh/piece/fastener.h"

#include <array>
#include <cmath>

namespace bedbow {

DofMask mask_of(const std::vector<std::string>& names) {
  static constexpr std::array<std::string_view, 6> order{"x", "y", "z", "rx", "ry", "rz"};
  DofMask out{};
  for (const std::string& name : names)
    for (std::size_t i = 0; i < order.size(); ++i)
      if (name == order[i]) out[i] = true;
  return out;
}

GivenPoint joint_place(const CaseBuilder& b, const CaseValues& in) {
  if (in.given("at")) {
    for (const char* key : {"x", "y"})
      if (in.given(key)) b.wrong(in, key, "give a place by `at` or by x and y, not by both");
    return in.vector3("at");
  }
  if (!in.given("x")) b.missing(in, "x", "the place along the bend line, or at = [x, y, z]");
  return {in.number_or("x", left_out), in.number_or("y", left_out), left_out};
}

void joint_base(const CaseBuilder& b, const CaseValues& in, JointBase& out) {
  out.pos = in.pos();
  out.name = in.text("name").value_or("");
  const auto joins = in.texts("joins");
  for (std::size_t i = 0; i < joins.size() && i < 2; ++i)
    out.joins[i] = ref_of(b, joins[i], in.pos("joins"), in.path("joins"));
}

std::string thread_of(const CaseValues& in, std::string_view key) {
  return in.text(key).value_or("");
}

std::string grade_of(const CaseBuilder& b, const CaseValues& in, double diameter) {
  const auto grade = in.text("class");
  if (!grade) return "";
  if (std::isfinite(diameter) && !find_grade(*grade, diameter))
    b.wrong(in, "class", "unknown property class \"" + *grade + "\" for this diameter; available: " + grade_names());
  return *grade;
}

void joint_stiffness(const CaseBuilder& b, const CaseValues& in, const DofMask& holds, std::optional<double>& along,
                     std::optional<double>& about) {
  const bool moves = holds[ux] || holds[uy] || holds[uz], turns = holds[rx] || holds[ry] || holds[rz];
  about = in.number("rotational_stiffness");
  if (about && !turns) b.wrong(in, "rotational_stiffness", "no rotation is held, so it has no effect");
  const CaseValue* v = in.value("stiffness");
  if (!v) return;
  if (v->other_dim) {
    if (!turns) b.wrong(in, "stiffness", "this is a rotational stiffness, but no rotation is held");
    if (about) b.wrong(in, "stiffness", "the rotational stiffness is given twice");
    about = v->numbers.front();
  } else {
    if (!moves)
      b.wrong(in, "stiffness", "only rotations are held; expected a rotational stiffness such as \"5000 N*m/rad\"");
    along = v->numbers.front();
  }
}

} // namespace bedbow
