#include "io/schema/key_tables.h"

#include <cstdio>

namespace bedbow {

namespace {

/// A pipe would end the cell.
std::string cell(const std::string& text) {
  std::string out;
  for (const char c : text) out += c == '|' ? std::string("\\|") : std::string(1, c);
  return out;
}

std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4g", value);
  return text;
}

std::string joined(const std::vector<std::string>& items, const std::string& between) {
  std::string out;
  for (const std::string& i : items) out += (out.empty() ? "" : between) + i;
  return out;
}

std::string kind_of(const KeySpec& k) {
  switch (k.kind) {
  case ValueKind::text:
    return "text";
  case ValueKind::name:
    return "name";
  case ValueKind::choice:
    return "one of `" + joined(k.choices, "` `") + "`";
  case ValueKind::ref:
    return "bar, member, panel or `\"ground\"`";
  case ValueKind::unit:
    return "unit of " + std::string(info(k.dim).name);
  case ValueKind::quantity:
    return std::string(info(k.dim).name) + (k.or_dim ? " or " + std::string(info(*k.or_dim).name) : "");
  case ValueKind::sheet:
    return "length or gauge";
  case ValueKind::thread:
    return "thread size or length";
  case ValueKind::number:
    return "number";
  case ValueKind::integer:
    return "whole number";
  case ValueKind::boolean:
    return "true or false";
  case ValueKind::any:
    return "any";
  case ValueKind::table:
    return "table";
  case ValueKind::tables:
    return "tables";
  case ValueKind::named:
    return "tables by name";
  }
  return "";
}

std::string range_of(const KeySpec& k) {
  if (k.kind == ValueKind::quantity || k.kind == ValueKind::sheet) {
    if (k.range == Range::positive) return "greater than 0";
    return k.range == Range::not_negative ? "not negative" : "";
  }
  if (k.least && k.greatest) return number(*k.least) + " to " + number(*k.greatest);
  return k.least ? "at least " + number(*k.least) : k.greatest ? "at most " + number(*k.greatest) : "";
}

std::string count_of(const KeySpec& k) {
  if (!k.is_list()) return "";
  if (k.min_items == k.max_items) return "list of " + std::to_string(k.min_items);
  if (k.max_items == KeySpec::no_limit) return "list";
  return "list of " + std::to_string(k.min_items) + " to " + std::to_string(k.max_items);
}

std::string value_of(const Schema& schema, const KeySpec& k) {
  if (!k.table.empty()) {
    const std::string& heading = schema.table(k.table).heading;
    return kind_of(k) + " `" + heading + "`";
  }
  std::vector<std::string> parts;
  for (const std::string& p : {count_of(k), kind_of(k), range_of(k)})
    if (!p.empty()) parts.push_back(p);
  const bool told = k.kind != ValueKind::choice && !k.example.empty();
  const std::string example = told ? "`" + k.example_item() + "`" : "";
  return joined(parts, ", ") + (example.empty() ? "" : ": " + example);
}

std::string due_of(const KeySpec& k) {
  if (k.is_required) return "required";
  return k.by_default.empty() ? "" : "default: " + k.by_default;
}

std::string section(const Schema& schema, const TableSpec& t) {
  std::string out = "### " + (t.heading.empty() ? "At the top of the file" : "`" + t.heading + "`") + "\n\n" + t.doc;
  if (t.open_keys) out += " Further keys are lengths: sizes of a shape provided by a plugin.";
  out += "\n\n| key | value | | meaning |\n|---|---|---|---|\n";
  for (const KeySpec& k : t.keys)
    out += "| `" + k.key + "` | " + cell(value_of(schema, k)) + " | " + cell(due_of(k)) + " | " + cell(k.doc) + " |\n";
  return out;
}

} // namespace

std::string key_tables(const Schema& schema) {
  std::string out;
  for (const TableSpec& t : schema.tables) out += (out.empty() ? "" : "\n") + section(schema, t);
  return out;
}

} // namespace bedbow
