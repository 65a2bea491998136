/// \file
/// What a case file may contain: every table and key, its kind of value, whether it is required, its default and its
/// meaning.
/// One description serves the reader, its messages (nearest key, accepted example), the key tables of
/// docs/case-format.md and the JSON Schema.
#pragma once

#include "io/units/dimension.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

enum class ValueKind {
  text,     ///< free text
  name,     ///< name that others refer to: not empty, no dot
  choice,   ///< one of `choices`
  ref,      ///< part to which something is joined: "body.bar", "ground", the name of a member or panel
  unit,     ///< a unit of dimension `dim`
  quantity, ///< number with unit, of dimension `dim`, or of `or_dim` where that is given
  sheet,    ///< thickness of sheet: a length, or a gauge "16 ga"
  thread,   ///< thread size "M20", or a plain diameter
  number,   ///< bare number
  integer,  ///< bare whole number
  boolean,  ///< true or false
  any,      ///< kept as written
  table,    ///< a table, described by `table`
  tables,   ///< an array of tables
  named     ///< a table of tables under names chosen in the case
};

/// Which numbers are accepted.
enum class Range {
  any,
  not_negative,
  positive ///< for quantities: at least the least value of their dimension
};

/// One key of a table.
struct KeySpec {
  std::string key;
  ValueKind kind = ValueKind::text;
  std::string doc; ///< one or two sentences without the final full stop
  Dim dim = Dim::length;
  std::optional<Dim> or_dim;
  Range range = Range::any;
  std::optional<double> least, greatest; ///< further bounds, SI, inclusive
  int min_items = 0, max_items = 0;      ///< permitted number of list items; max_items = 0: not a list. See no_limit
  bool is_required = false;
  std::string example;    ///< an accepted value as in TOML, without quotes
  std::string by_default; ///< default, in words
  bool is_told = false;   ///< the default is worth reporting when a case is explained
  std::vector<std::string> choices;
  std::string table; ///< id of the described table

  static constexpr int no_limit = 100000;
  [[nodiscard]] bool is_list() const { return max_items > 0; }
  /// The example as the file writes one item of it: in quotes unless it is bare.
  [[nodiscard]] std::string example_item() const;
  /// The example as the file writes the whole value: for a list as many items as required, three at most.
  [[nodiscard]] std::string example_value() const;

  // Fluent declarations, to be read from left to right.
  KeySpec required() const;
  KeySpec positive() const;
  KeySpec not_negative() const;
  KeySpec between(double lowest, double highest) const;
  KeySpec list(int at_least = 1, int at_most = no_limit) const;
  KeySpec otherwise(std::string words) const;
  KeySpec told() const;
  KeySpec like(std::string accepted) const;
  KeySpec or_of(Dim other) const;
};

KeySpec text_key(std::string key, std::string doc);
KeySpec name_key(std::string key, std::string doc);
KeySpec choice_key(std::string key, std::vector<std::string> choices, std::string doc);
KeySpec ref_key(std::string key, std::string doc);
KeySpec length(std::string key, std::string example, std::string doc); ///< a quantity_key

/// Degrees of freedom of a hold or release, as named in the case file.
inline const std::vector<std::string> movements{"x", "y", "z", "rx", "ry", "rz"};
KeySpec quantity_key(std::string key, Dim dim, std::string example, std::string doc);
KeySpec number_key(std::string key, std::string doc);
KeySpec integer_key(std::string key, std::string doc);
KeySpec boolean_key(std::string key, std::string doc);
KeySpec any_key(std::string key, std::string doc);
KeySpec kind_key(std::string key, ValueKind kind, std::string doc);
KeySpec table_key(std::string key, ValueKind kind, std::string table, std::string doc);

/// The keys of one table. Several places of a case may share one.
struct TableSpec {
  std::string id;      ///< "bar"
  std::string heading; ///< as the file writes it: "[[BODY.bar]]"
  std::string doc;
  std::vector<KeySpec> keys;
  bool open_keys = false; ///< further keys are lengths (sizes of a plugin's section shape)

  [[nodiscard]] const KeySpec* find(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> key_names() const;
};

/// All tables. The one with id "case" is the file as a whole.
struct Schema {
  std::vector<TableSpec> tables;
  /// Throws std::out_of_range for an id that is not described.
  [[nodiscard]] const TableSpec& table(std::string_view id) const;
  [[nodiscard]] const TableSpec& root() const { return table("case"); }
};

const Schema& case_schema();

/// The tables in groups, for case_schema(): see schema_*.cpp.
namespace schema {
void add_case(Schema& schema);
void add_bodies(Schema& schema);
void add_joints(Schema& schema);
void add_structure(Schema& schema);
void add_settings(Schema& schema);
void add_mesh(Schema& schema);
/// The tables of joints as keys of the case.
std::vector<KeySpec> joint_table_keys();
/// Keys that bars, members and stock share: shape, sizes, given properties, turn.
std::vector<KeySpec> shape_keys();
} // namespace schema

} // namespace bedbow
