// Walks over the tables of a case: unknown keys, missing keys, tables in place of values and the reverse.
#include "io/case/case_values.h"
#include "io/case/value_check.h"
#include "io/text/nearest.h"

#include <algorithm>

namespace bedbow {

class CaseChecker {
public:
  CaseChecker(const Schema& schema, const std::vector<std::string>& extra_keys, bool report_missing,
              ProblemList& problems)
      : schema_(schema)
      , extra_keys_(extra_keys)
      , report_missing_(report_missing)
      , problems_(problems) {}

  CaseValues table(const CaseNode& node, const TableSpec& spec, const std::string& path, const std::string& heading) {
    CaseValues out(spec, path, heading, node.pos);
    for (const CaseEntry& entry : node.entries) {
      const KeySpec* key = spec.find(entry.key);
      if (key)
        out.values_.emplace(entry.key, value(entry, *key, out));
      else if (spec.open_keys && std::ranges::find(extra_keys_, entry.key) != extra_keys_.end())
        out.values_.emplace(entry.key, extra(entry, out));
      else
        unknown(entry, out);
    }
    if (report_missing_) missing(out);
    return out;
  }

private:
  CaseValue value(const CaseEntry& entry, const KeySpec& key, const CaseValues& in) {
    switch (key.kind) {
    case ValueKind::table:
      return one_table(entry, key, in);
    case ValueKind::tables:
      return many_tables(entry, key, in);
    case ValueKind::named:
      return named_tables(entry, key, in);
    default:
      return check_value(entry.value, key, in.path(entry.key), problems_);
    }
  }

  CaseValue bad(const CaseEntry& entry, const std::string& path, const std::string& text) {
    problems_.error(entry.pos, path, text);
    CaseValue out;
    out.pos = entry.pos;
    out.good = false;
    return out;
  }

  static CaseValue begun(const CaseEntry& entry) {
    CaseValue out;
    out.pos = entry.value.pos.line > 0 ? entry.value.pos : entry.pos;
    out.node = &entry.value;
    return out;
  }

  CaseValue one_table(const CaseEntry& entry, const KeySpec& key, const CaseValues& in) {
    const std::string path = in.path(entry.key);
    if (entry.value.is_table_list())
      return bad(entry, path, "there is only one such table: write [" + path + "], not [[" + path + "]]");
    if (!entry.value.is_table())
      return bad(entry, path, shown(entry.value) + " is " + kind_of(entry.value) + "; expected a table [" + path + "]");
    CaseValue out = begun(entry);
    out.tables.push_back(table(entry.value, schema_.table(key.table), path, "[" + path + "]"));
    return out;
  }

  CaseValue many_tables(const CaseEntry& entry, const KeySpec& key, const CaseValues& in) {
    const std::string path = in.path(entry.key);
    if (entry.value.is_table())
      return bad(entry, path, "there may be several of these: write [[" + path + "]], not [" + path + "]");
    const bool empty_list = entry.value.type == CaseNode::Type::list && entry.value.items.empty();
    if (!entry.value.is_table_list() && !empty_list)
      return bad(entry, path,
                 shown(entry.value) + " is " + kind_of(entry.value) + "; expected tables [[" + path + "]]");
    CaseValue out = begun(entry);
    const TableSpec& spec = schema_.table(key.table);
    for (std::size_t i = 0; i < entry.value.items.size(); ++i) {
      const CaseNode& item = entry.value.items[i];
      const CaseNode* name = item.find("name");
      const bool named = name && name->type == CaseNode::Type::text && !name->text.empty() && name->text.size() < 100;
      out.tables.push_back(
          table(item, spec, path + "." + (named ? name->text : std::to_string(i + 1)), "[[" + path + "]]"));
    }
    return out;
  }

  CaseValue named_tables(const CaseEntry& entry, const KeySpec& key, const CaseValues& in) {
    const std::string path = in.path(entry.key);
    if (!entry.value.is_table()) return bad(entry, path, "expected tables [" + path + ".NAME]");
    CaseValue out = begun(entry);
    for (const CaseEntry& one : entry.value.entries) {
      if (!one.value.is_table()) {
        bad(one, path + "." + one.key, "expected a table [" + path + ".NAME] that contains the key");
        continue;
      }
      out.tables.push_back(
          table(one.value, schema_.table(key.table), path + "." + one.key, "[" + path + "." + one.key + "]"));
      out.tables.back().name_ = one.key;
      if (out.tables.back().pos_.line == 0) out.tables.back().pos_ = one.pos;
    }
    return out;
  }

  CaseValue extra(const CaseEntry& entry, const CaseValues& in) {
    const KeySpec size = quantity_key(entry.key, Dim::length, "16 mm", "size of the shape").positive();
    return check_value(entry.value, size, in.path(entry.key), problems_);
  }

  static std::string where(const CaseValues& in) {
    return in.path().empty() ? "at the top of the file" : "in " + in.heading();
  }

  void unknown(const CaseEntry& entry, const CaseValues& in) {
    const std::string key = nearest(entry.key, in.spec().key_names());
    problems_.error(entry.pos, in.path(entry.key),
                    "unknown key \"" + entry.key + "\" " + where(in) + "; nearest known key is \"" + key + "\"" +
                        elsewhere(entry.key, in));
  }

  // A key that is known in another table was most likely put under the wrong heading.
  [[nodiscard]] std::string elsewhere(const std::string& key, const CaseValues& in) const {
    std::vector<std::string> headings;
    for (const TableSpec& t : schema_.tables)
      if (&t != &in.spec() && t.find(key)) headings.push_back(t.heading.empty() ? "the top of the file" : t.heading);
    const bool telling = !headings.empty() && headings.size() <= 3;
    return telling ? " (\"" + key + "\" belongs in " + joined(headings) + ")" : "";
  }

  void missing(const CaseValues& in) {
    for (const KeySpec& key : in.spec().keys) {
      if (!key.is_required || in.given(key.key)) continue;
      const std::string path = in.path(key.key);
      if (key.kind == ValueKind::tables)
        problems_.error(in.pos(), path, "missing table [[" + path + "]]: " + key.doc);
      else
        problems_.error(in.pos(), path, "missing key \"" + key.key + "\" in " + in.heading() + of(in) + ": " + key.doc);
    }
  }

  // Which one of several tables of that heading.
  static std::string of(const CaseValues& in) { return in.heading().starts_with("[[") ? " (" + in.path() + ")" : ""; }

  const Schema& schema_;
  const std::vector<std::string>& extra_keys_;
  bool report_missing_;
  ProblemList& problems_;
};

CaseValues check_case(const CaseNode& root, const Schema& schema, const std::vector<std::string>& extra_keys,
                      bool report_missing, ProblemList& problems) {
  return CaseChecker(schema, extra_keys, report_missing, problems).table(root, schema.root(), "", "");
}

} // namespace bedbow
