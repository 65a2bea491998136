/// \file
/// A case file checked key by key against the schema: values in SI units, each with its position. A wrong value is
/// reported once and then reads as missing, so that it causes no second message.
#pragma once

#include "io/case/case_node.h"
#include "io/case/problem_list.h"
#include "io/schema/schema.h"

#include <Eigen/Core>

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bedbow {

class CaseValues;

/// One key's value. The key's ValueKind states which members apply.
struct CaseValue {
  SourcePos pos;
  bool good = true;               ///< false: reported already
  std::vector<double> numbers;    ///< quantities in SI, numbers, integers; one unless a list
  std::vector<std::string> texts; ///< texts, names, choices, refs, units; thread sizes as written
  bool flag = false;
  bool other_dim = false;         ///< a quantity of KeySpec::or_dim
  std::optional<int> gauge;       ///< sheet thickness by gauge
  const CaseNode* node = nullptr; ///< as in the file
  std::vector<CaseValues> tables; ///< table (one), tables, named
};

/// The keys of one table.
class CaseValues {
public:
  CaseValues() = default;
  CaseValues(const TableSpec& spec, std::string path, std::string heading, SourcePos pos)
      : spec_(&spec)
      , path_(std::move(path))
      , heading_(std::move(heading))
      , pos_(pos) {}

  /// Whether the file has the key, whether its value is right or wrong.
  [[nodiscard]] bool given(std::string_view key) const { return values_.contains(key); }
  [[nodiscard]] std::optional<double> number(std::string_view key) const;
  /// NaN where the key is missing or wrong.
  [[nodiscard]] double number_or_nan(std::string_view key) const;
  /// The default where the key is missing, NaN where it is wrong.
  [[nodiscard]] double number_or(std::string_view key, double otherwise) const;
  [[nodiscard]] int integer_or(std::string_view key, int otherwise) const;
  [[nodiscard]] std::vector<double> numbers(std::string_view key) const;
  [[nodiscard]] std::optional<std::string> text(std::string_view key) const;
  [[nodiscard]] std::vector<std::string> texts(std::string_view key) const;
  [[nodiscard]] bool flag_or(std::string_view key, bool otherwise) const;
  /// Three numbers; NaN where the key is missing or wrong.
  [[nodiscard]] Eigen::Vector3d vector3(std::string_view key) const;
  [[nodiscard]] const CaseValue* value(std::string_view key) const; ///< nullptr where missing or wrong
  [[nodiscard]] const CaseValues* table(std::string_view key) const;
  [[nodiscard]] const std::vector<CaseValues>& tables(std::string_view key) const;
  [[nodiscard]] const std::map<std::string, CaseValue, std::less<>>& all() const { return values_; }

  [[nodiscard]] SourcePos pos() const { return pos_; }
  /// Place of a key's value; of the table where it is missing.
  [[nodiscard]] SourcePos pos(std::string_view key) const;
  /// "bed.bar.web"
  [[nodiscard]] const std::string& path() const { return path_; }
  /// "bed.bar.web.height"
  [[nodiscard]] std::string path(std::string_view key) const;
  /// Heading of the table in the file: "[[bed.bar]]", "[material.steel]"; empty for the file as a whole.
  [[nodiscard]] const std::string& heading() const { return heading_; }
  [[nodiscard]] const TableSpec& spec() const { return *spec_; }
  /// Name of a `named` table; else its `name` key; may be empty.
  [[nodiscard]] std::string name() const;

private:
  friend class CaseChecker;
  const TableSpec* spec_ = nullptr;
  std::string path_, heading_, name_;
  SourcePos pos_;
  std::map<std::string, CaseValue, std::less<>> values_;
};

/// Checks a case against the schema. \param extra_keys further keys that tables with `open_keys` may have.
/// \param report_missing whether missing required keys are problems: not where only part of the file could be read.
CaseValues check_case(const CaseNode& root, const Schema& schema, const std::vector<std::string>& extra_keys,
                      bool report_missing, ProblemList& problems);

} // namespace bedbow
