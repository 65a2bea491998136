/// \file
/// A case file as parsed: tables, lists and values with their positions, before they are interpreted. Sweeps change a
/// value here and interpret the case again, without parsing text.
#pragma once

#include "mesh/machine/machine.h"

#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

struct CaseEntry;

/// One value of a case file. `type` states which members apply.
struct CaseNode {
  enum class Type { text, integer, number, boolean, date, list, table };
  Type type = Type::table;
  std::string text;               ///< text; for numbers and dates the value as one would write it
  double number = 0;              ///< integer and number
  bool flag = false;              ///< boolean
  bool exact = true;              ///< integer: `number` is exact
  std::vector<CaseNode> items;    ///< list
  std::vector<CaseEntry> entries; ///< table, in the order of the file
  SourcePos pos;

  [[nodiscard]] const CaseNode* find(std::string_view key) const;
  [[nodiscard]] CaseNode* find(std::string_view key);
  [[nodiscard]] bool is_table() const { return type == Type::table; }
  /// A list that holds tables and nothing else, at least one.
  [[nodiscard]] bool is_table_list() const;

  static CaseNode of_text(std::string text, SourcePos pos = {});
  static CaseNode of_number(double number, SourcePos pos = {});
};

struct CaseEntry {
  std::string key;
  SourcePos pos; ///< of the key
  CaseNode value;
};

/// Kind of a value, for messages: "a string", "a list".
std::string kind_of(const CaseNode& node);

/// The value as TOML writes it, shortened where it is long: "900 mm" in quotes, 16, [1, 2].
std::string shown(const CaseNode& node);

/// The value under a dotted key. An element of an array of tables goes by its `name`, or by its number from 1:
/// "bed.bar.web.height", "support.2.x". \return nullptr where there is none.
CaseNode* find_key(CaseNode& root, std::string_view dotted);
const CaseNode* find_key(const CaseNode& root, std::string_view dotted);

/// The table that holds the last part of a dotted key, so that a key which the file omits can be added; and that
/// part. \return nullptr where there is no such table.
CaseNode* find_parent(CaseNode& root, std::string_view dotted, std::string& last);

} // namespace bedbow
