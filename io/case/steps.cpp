#include "io/case/steps.h"

#include "io/case/node_quantity.h"

#include <cmath>
#include <cstdio>
#include <stdexcept>

namespace bedbow {

namespace {

NodeQuantity number_or_quantity(const CaseNode& node) {
  if (is_bare_number(node)) return {node.number, "", {}};
  if (auto quantity = quantity_of(node)) return *std::move(quantity);
  throw std::invalid_argument(shown(node) + " is neither a value with a unit nor a bare number");
}

CaseNode value(double number, const NodeQuantity& like, bool whole, SourcePos pos) {
  char text[32];
  std::snprintf(text, sizeof text, "%.12g", number);
  if (!like.unit_text.empty()) return CaseNode::of_text(std::string(text) + " " + like.unit_text, pos);
  CaseNode out = CaseNode::of_number(std::stod(text), pos);
  if (whole && out.number == std::floor(out.number)) out.type = CaseNode::Type::integer;
  return out;
}

} // namespace

std::vector<CaseNode> values_between(const CaseNode& from, const CaseNode& to, int steps) {
  const NodeQuantity a = number_or_quantity(from), z = number_or_quantity(to);
  if (a.unit_text.empty() != z.unit_text.empty() || a.unit.exponents != z.unit.exponents)
    throw std::invalid_argument(shown(from) + " and " + shown(to) + " are not of the same kind");
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
