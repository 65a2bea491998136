#include "io/schema/schema.h"

#include "io/units/number.h"
#include "io/units/output_units.h"
#include "io/units/unit.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace bedbow {

std::string KeySpec::example_item() const {
  const bool bare = kind == ValueKind::number || kind == ValueKind::integer || kind == ValueKind::boolean;
  return bare || example.starts_with('[') ? example : "\"" + example + "\"";
}

std::string KeySpec::example_value() const {
  const std::string one = example_item();
  const bool whole = one.starts_with('[') && kind != ValueKind::any; // a direction, say; any item may itself be a list
  if (!is_list() || whole) return one;
  std::string out = "[" + one;
  for (int i = 1; i < std::min(min_items, 3); ++i) out += ", " + one;
  return out + "]";
}

KeySpec KeySpec::as_sizes() const {
  return length(key, "60 mm", doc).list(2, 2).positive();
}

KeySpec KeySpec::otherwise(double value) const {
  const std::string unit(kind == ValueKind::quantity ? leading_number(example).rest : "");
  const std::string words = unit.empty() ? short_number(value) : short_text(value, {unit, parse_unit(unit).size()});
  return otherwise(words).with(&KeySpec::default_value, value);
}

KeySpec kind_key(std::string key, ValueKind kind, std::string doc) {
  KeySpec out;
  out.key = std::move(key);
  out.kind = kind;
  out.doc = std::move(doc);
  return out;
}

KeySpec text_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::text, std::move(doc));
}

KeySpec name_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::name, std::move(doc));
}

KeySpec choice_key(std::string key, std::vector<std::string> choices, std::string doc) {
  KeySpec out = kind_key(std::move(key), ValueKind::choice, std::move(doc));
  out.choices = std::move(choices);
  out.example = out.choices.front();
  return out;
}

KeySpec ref_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::ref, std::move(doc)).like("bed.web");
}

KeySpec length(std::string key, std::string example, std::string doc) {
  return quantity_key(std::move(key), Dim::length, std::move(example), std::move(doc));
}

KeySpec quantity_key(std::string key, Dim dim, std::string example, std::string doc) {
  KeySpec out = kind_key(std::move(key), ValueKind::quantity, std::move(doc)).like(std::move(example));
  out.dim = dim;
  return out;
}

KeySpec number_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::number, std::move(doc)).like("0.5");
}

KeySpec integer_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::integer, std::move(doc)).like("3");
}

KeySpec boolean_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::boolean, std::move(doc)).like("true");
}

KeySpec any_key(std::string key, std::string doc) {
  return kind_key(std::move(key), ValueKind::any, std::move(doc));
}

KeySpec table_key(std::string key, ValueKind kind, std::string table, std::string doc) {
  KeySpec out = kind_key(std::move(key), kind, std::move(doc));
  out.table = std::move(table);
  return out;
}

const KeySpec* TableSpec::find(std::string_view key) const {
  const auto it = std::ranges::find(keys, key, &KeySpec::key);
  return it == keys.end() ? nullptr : &*it;
}

std::vector<std::string> TableSpec::key_names() const {
  std::vector<std::string> names;
  names.reserve(keys.size());
  for (const KeySpec& k : keys) names.push_back(k.key);
  return names;
}

const TableSpec& Schema::table(std::string_view id) const {
  const auto it = std::ranges::find(tables, id, &TableSpec::id);
  if (it == tables.end()) throw std::out_of_range("no table '" + std::string(id) + "' in the schema");
  return *it;
}

const Schema& case_schema() {
  static const Schema whole = [] {
    Schema s;
    schema::add_case(s);
    schema::add_bodies(s);
    schema::add_joints(s);
    schema::add_structure(s);
    schema::add_settings(s);
    schema::add_mesh(s);
    return s;
  }();
  return whole;
}

} // namespace bedbow
