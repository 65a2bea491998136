#include "io/schema_json.h"

#include <nlohmann/json.hpp>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

/// A number, mixed number or fraction, then a unit.
constexpr const char* quantity_pattern = "^\\s*[-+]?[0-9.][-+0-9./eE_ ]*\\s*[^0-9\\s].*$";

Json text(const char* pattern = nullptr) {
  Json out = {{"type", "string"}};
  if (pattern) out["pattern"] = pattern;
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
    return text(quantity_pattern);
  case ValueKind::name:
  case ValueKind::ref:
    return {{"type", "string"}, {"minLength", 1}, {"maxLength", 100}};
  case ValueKind::text:
  case ValueKind::unit:
  case ValueKind::thread:
    return text();
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
  if (!k.by_default.empty()) doc += ". Left out: " + k.by_default;
  out["description"] = doc;
  const bool worded = out.value("type", "") == "string";
  if (worded && !k.example.empty()) out["examples"] = {k.example};
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
  out["additionalProperties"] = t.open_keys ? text(quantity_pattern) : Json(false);
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
