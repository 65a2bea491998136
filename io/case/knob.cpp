#include "io/case/knob.h"

#include "io/case/node_quantity.h"
#include "io/units/number.h"
#include "io/units/unit.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr std::array physical_numbers{"nu", "n", "friction"};
constexpr std::array asked{"limits", "solve", "sweep", "stock", "fit", "output", "plugins", "mesh", "dial"};

void add(const std::string& key, int item, const CaseNode& node, std::vector<Knob>& out) {
  const std::string_view last = std::string_view(key).substr(key.rfind('.') + 1);
  if (is_bare_number(node) && item < 0 && std::ranges::find(physical_numbers, last) != physical_numbers.end())
    out.push_back({key, item, node.number, false});
  const auto parts = quantity_of(node);
  if (!parts) return;
  static const Exponents metre = parse_unit("m").exponents;
  out.push_back({key, item, parts->unit.si(parts->number), parts->unit.exponents == metre});
}

/// The part of a dotted key that names an element of an array of tables.
std::string part_of(const CaseNode& table, std::size_t index) {
  const CaseNode* name = table.find("name");
  const bool plain =
      name && name->type == CaseNode::Type::text && name->text.find('.') == std::string::npos && !name->text.empty();
  return plain ? name->text : std::to_string(index + 1);
}

void walk(const CaseNode& table, const std::string& path, std::vector<Knob>& out) {
  for (const CaseEntry& e : table.entries) {
    if (path.empty() && std::ranges::find(asked, e.key) != asked.end()) continue;
    if (e.key.find('.') != std::string::npos) continue; // no dotted key can name it
    const std::string key = path.empty() ? e.key : path + "." + e.key;
    if (e.value.is_table()) {
      walk(e.value, key, out);
    } else if (e.value.is_table_list()) {
      for (std::size_t i = 0; i < e.value.items.size(); ++i)
        walk(e.value.items[i], key + "." + part_of(e.value.items[i], i), out);
    } else if (e.value.type == CaseNode::Type::list) {
      for (std::size_t i = 0; i < e.value.items.size(); ++i) add(key, static_cast<int>(i), e.value.items[i], out);
    } else {
      add(key, -1, e.value, out);
    }
  }
}

} // namespace

std::string Knob::name() const {
  return item < 0 ? key : key + "[" + std::to_string(item + 1) + "]";
}

std::vector<Knob> knobs_of(const CaseSource& source) {
  std::vector<Knob> out;
  walk(source.root, "", out);
  return out;
}

double si_of(const CaseNode& value) {
  const auto parts = quantity_of(value);
  if (!parts) throw std::invalid_argument(shown(value) + " is not a value with a unit");
  return parts->unit.si(parts->number);
}

CaseNode like_quantity(const CaseNode& like, double si) {
  const auto parts = quantity_of(like);
  if (!parts) throw std::invalid_argument(shown(like) + " is not a value with a unit");
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.15g", si / parts->unit.size());
  return CaseNode::of_text(std::string(text.data()) + " " + parts->unit_text, like.pos);
}

CaseSource turned(const CaseSource& source, const Knob& knob, double si) {
  const CaseNode* old = find_key(source.root, knob.key);
  if (!old) throw std::invalid_argument("the case has no \"" + knob.key + "\"");
  CaseNode value = *old;
  if (is_bare_number(value))
    value = CaseNode::of_number(si, old->pos);
  else if (knob.item < 0)
    value = like_quantity(value, si);
  else
    value.items.at(static_cast<std::size_t>(knob.item)) =
        like_quantity(value.items[static_cast<std::size_t>(knob.item)], si);
  const std::pair<std::string, CaseNode> change{knob.key, std::move(value)};
  return with_values(source, {&change, 1});
}

} // namespace bedbow
