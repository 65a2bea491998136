/// \file
/// A case as a list of tables whose numbers know what they are, so that the same machine can be written mirrored, in
/// inches, shuffled, with its joins reversed or twice as large.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace bedbow::verification {

/// What a number is; lengths in mm, all others in the unit that `unit_of` names.
enum class Quantity { plain, length, force, moment, stiffness, turn_stiffness, line_force, density, stress, angle };

/// A key with its value: numbers, or text that is written as it stands.
struct Entry {
  std::string key;
  Quantity quantity = Quantity::plain;
  std::vector<double> numbers;
  bool list = false;             ///< written as [..]
  std::vector<std::string> text; ///< instead of numbers, in quotes
};

/// One table of a case.
struct CaseTable {
  std::string heading; ///< "[sheet]", "[[post]]"
  std::vector<Entry> entries;

  CaseTable& text(const std::string& key, const std::string& value);
  CaseTable& texts(const std::string& key, const std::vector<std::string>& values);
  CaseTable& number(const std::string& key, Quantity quantity, double value);
  CaseTable& numbers(const std::string& key, Quantity quantity, const std::vector<double>& values);
  /// key = true
  CaseTable& flag(const std::string& key);
  /// The entry of that key; nullptr where there is none.
  [[nodiscard]] Entry* find(const std::string& key);
};

using CaseTables = std::vector<CaseTable>;

enum class LengthUnit { mm, inch };

/// The case as TOML, every number with all the digits that a double has.
std::string case_text(const CaseTables& tables, LengthUnit unit = LengthUnit::mm);

/// The machine seen in a mirror across x = length / 2 [mm]. Everything keeps its name.
CaseTables mirrored(CaseTables tables, double length);

/// All repeated tables in another order, but for hinges among themselves. \param seed decides the order.
CaseTables shuffled(const CaseTables& tables, std::uint64_t seed);

/// joins = [b, a] for joins = [a, b].
CaseTables joins_reversed(CaseTables tables);

/// All lengths doubled, forces times four, so that stresses and angles stay; what weighs is half as dense.
CaseTables doubled(CaseTables tables);

} // namespace bedbow::verification
