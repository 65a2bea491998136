#include "io/case/node_quantity.h"

#include "io/units/number.h"

namespace bedbow {

bool is_bare_number(const CaseNode& node) {
  return node.type == CaseNode::Type::number || node.type == CaseNode::Type::integer;
}

std::optional<NodeQuantity> quantity_of(const CaseNode& node) {
  if (node.type != CaseNode::Type::text) return std::nullopt;
  const std::string plain = plain_ascii(node.text);
  const LeadingNumber number = leading_number(plain);
  if (!number.ok() || number.rest.empty()) return std::nullopt;
  NodeQuantity out{number.value, std::string(number.rest), parse_unit(number.rest)};
  if (!out.unit.ok()) return std::nullopt;
  return out;
}

} // namespace bedbow
