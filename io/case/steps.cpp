#include "io/case/steps.h"

#include "io/units/number.h"
#include "io/units/unit.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace bedbow {

namespace {

bool is_bare(const CaseNode& node) {
  return node.type == CaseNode::Type::integer || node.type == CaseNode::Type::number;
}

struct Parts {
  double number = 0;
  std::string unit_text;
  Unit unit;
};

Parts parts_of(const CaseNode& node) {
  if (is_bare(node)) return {node.number, "", {}};
  const std::string plain = plain_ascii(node.text);
  const LeadingNumber number = leading_number(plain);
  Parts out{number.value, std::string(number.rest), parse_unit(number.rest)};
  if (node.type != CaseNode::Type::text || !number.ok() || !out.unit.ok())
    throw std::invalid_argument(shown(node) + " is no value with a unit, nor a bare number");
  return out;
}

CaseNode value(double number, const Parts& like, bool whole, SourcePos pos) {
  char text[32];
  std::snprintf(text, sizeof text, "%.12g", number);
  if (!like.unit_text.empty()) return CaseNode::of_text(std::string(text) + " " + like.unit_text, pos);
  CaseNode out = CaseNode::of_number(std::stod(text), pos);
  if (whole && out.number == std::floor(out.number)) out.type = CaseNode::Type::integer;
  return out;
}

} // namespace

std::vector<CaseNode> values_between(const CaseNode& from, const CaseNode& to, int steps) {
  const Parts a = parts_of(from), z = parts_of(to);
  if (a.unit_text.empty() != z.unit_text.empty() || a.unit.exponents != z.unit.exponents)
    throw std::invalid_argument(shown(from) + " and " + shown(to) + " are not of one kind");
  const double last = z.number * (z.unit.size() / a.unit.size());
  const bool whole = from.type == CaseNode::Type::integer && to.type == CaseNode::Type::integer;
  std::vector<CaseNode> out;
  for (int i = 0; i < steps; ++i) {
    const double share = static_cast<double>(i) / (steps - 1);
    out.push_back(value(a.number + (last - a.number) * share, a, whole, from.pos));
  }
  return out;
}

} // namespace bedbow
