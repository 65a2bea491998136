#include "io/schema/schema_json.h"

#include <nlohmann/json.hpp>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

/// What a quantity looks like, by a regular expression that takes every spelling that plain_ascii() knows.
std::string quantity_pattern(const KeySpec& k) {
  const std::string minus = "[-\u2212\u2010\u2011\u2013]", sign = "[-\u2212\u2010\u2011\u2013+]?";
  const std::string part = "[\u00bd\u00bc\u00be\u215b\u215c\u215d\u215e]", space = "\\s*";
  const std::string fraction = "[0-9]+[/\u2044]0*[1-9][0-9]*", exponent = "(?:[eE]" + sign + "[0-9]+)";
  std::string out = "^";
  // No minus, but that of zero; no zero, but one before a fraction ("0 1/2 in") or of gauges ("0 ga").
  if (k.range != Range::any) out += "(?!" + space + minus + space + "[0.]*" + space + "(?:[1-9]|" + part + "))";
  const std::string gauge = k.kind == ValueKind::sheet ? "(?!ga)" : "";
  if (k.range == Range::positive)
    out += "(?!" + space + sign + space + "[0.]+" + exponent + "?" + space + gauge + "[A-Za-z\u00b5\u03bc\u00b0])";
  // A fraction, a mixed number or a decimal, then a unit, which begins with a letter or degrees and is not an exponent.
  out += space + sign + space + "(?:(?:[0-9]+(?:\\s+|" + minus + "))?" + fraction + "|[0-9]*" + space + part +
         "|(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)" + exponent + "?)";
  return out + space + "(?!" + exponent + ")[A-Za-z\u00b5\u03bc\u00b0].*$";
}

/// A name has no control character, and one by which others refer to it no dot.
Json name(const KeySpec& k) {
  const bool refers = k.kind == ValueKind::ref || k.key != "name";
  return {{"type", "string"},
          {"minLength", 1},
          {"maxLength", 100},
          {"pattern", refers ? "^[^\\u0000-\\u001f]*$" : "^[^.\\u0000-\\u001f]*$"}};
}

Json text(const KeySpec& k) {
  Json out = {{"type", "string"}};
  if (k.is_required) out["minLength"] = 1;
  return out;
}

Json numeric(const KeySpec& k) {
  Json out = {{"type", k.kind == ValueKind::integer ? "integer" : "number"}};
  if (k.range == Range::positive) out["exclusiveMinimum"] = 0;
  if (k.range == Range::not_negative) out["minimum"] = 0;
  if (k.least) out["minimum"] = *k.least;
  if (k.greatest) out["maximum"] = *k.greatest;
  return out;
}

Json reference(const std::string& table) {
  return {{"$ref", "#/$defs/" + table}};
}

/// One item of a key's value.
Json item(const KeySpec& k) {
  switch (k.kind) {
  case ValueKind::number:
  case ValueKind::integer:
    return numeric(k);
  case ValueKind::boolean:
    return {{"type", "boolean"}};
  case ValueKind::choice:
    return {{"type", "string"}, {"enum", k.choices}};
  case ValueKind::quantity:
  case ValueKind::sheet:
    return {{"type", "string"}, {"pattern", quantity_pattern(k)}};
  case ValueKind::name:
  case ValueKind::ref:
    return name(k);
  case ValueKind::text:
  case ValueKind::unit:
  case ValueKind::thread:
    return text(k);
  case ValueKind::table:
    return reference(k.table);
  case ValueKind::tables:
    return {{"type", "array"}, {"items", reference(k.table)}};
  case ValueKind::named:
    return {{"type", "object"}, {"additionalProperties", reference(k.table)}};
  case ValueKind::any:
    break;
  }
  return Json::object();
}

Json described(const KeySpec& k) {
  Json out = item(k);
  if (k.is_list()) {
    out = {{"type", "array"}, {"items", out}, {"minItems", k.min_items}};
    if (k.max_items < KeySpec::no_limit) out["maxItems"] = k.max_items;
  }
  std::string doc = k.doc;
  if (!k.by_default.empty()) doc += ". Default: " + k.by_default;
  out["description"] = doc;
  // TOML and JSON write these values alike.
  if (!k.example.empty()) out["examples"] = Json::array({Json::parse(k.example_value())});
  return out;
}

Json table_of(const TableSpec& t) {
  Json properties = Json::object();
  Json due = Json::array();
  for (const KeySpec& k : t.keys) {
    properties[k.key] = described(k);
    if (k.is_required) due.push_back(k.key);
  }
  Json out = {{"type", "object"}, {"description", t.heading + ": " + t.doc}, {"properties", properties}};
  if (!due.empty()) out["required"] = due;
  out["additionalProperties"] = false; // sizes of plugin shapes are already keys: see with_brought()
  return out;
}

} // namespace

Json json_schema(const Schema& schema) {
  Json out = {{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "bedbow case file"}};
  out.update(table_of(schema.root()));
  Json& defs = out["$defs"] = Json::object();
  for (const TableSpec& t : schema.tables)
    if (t.id != schema.root().id) defs[t.id] = table_of(t);
  return out;
}

} // namespace bedbow
