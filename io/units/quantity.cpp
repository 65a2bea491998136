#include "io/units/quantity.h"

#include "io/units/number.h"

#include <cmath>
#include <cstdio>

namespace bedbow {

namespace {

std::string quoted(std::string_view text) {
  constexpr std::size_t longest = 60;
  if (text.size() > longest) return "\"" + std::string(text.substr(0, longest)) + "...\"";
  return "\"" + std::string(text) + "\"";
}

std::string as_in(Dim due, std::string_view example) {
  return "as in \"" + std::string(example.empty() ? info(due).example : example) + "\"";
}

std::string is_due(Dim due, std::string_view example) {
  return "expected " + with_article(due) + ", " + as_in(due, example);
}

/// What a unit of the wrong kind usually means.
std::string hint(const Exponents& found, Dim due) {
  if (found == info(Dim::mass).exponents && due == Dim::force) return "; a weight is written in kgf, lbf or N";
  if (found == info(Dim::force).exponents && due == Dim::mass) return "; a mass is written in kg or lb";
  if (found == info(Dim::moment).exponents && due == Dim::rotational_stiffness) return "; it is a moment per angle";
  return "";
}

std::string wrong_kind(std::string_view text, const Unit& unit, Dim due, std::string_view example) {
  const std::optional<Dim> kind = dimension_of(unit.exponents);
  const std::string found = kind ? with_article(*kind) : "of another kind";
  return quoted(text) + " is " + found + "; " + is_due(due, example) + hint(unit.exponents, due);
}

std::string out_of_range(std::string_view text, Dim due) {
  char greatest[32];
  std::snprintf(greatest, sizeof greatest, "%g", info(due).greatest);
  return quoted(text) + " is too large: the greatest " + std::string(info(due).name) + " accepted is " + greatest +
         " in SI units";
}

bool is_count_of_inches(std::string_view rest) {
  return rest == "\"" || rest == "''";
}

/// What is wrong with the text after the number, which is not a known unit.
std::string unit_trouble(std::string_view text, std::string_view rest, const Unit& unit, Dim due,
                         std::string_view example) {
  if (is_count_of_inches(rest)) return quoted(text) + ": inches are written \"in\", " + as_in(Dim::length, "5/8 in");
  const bool second_number = rest.find_first_of("0123456789") != std::string_view::npos && rest.find(' ') != rest.npos;
  const std::string one = second_number ? " (one number and one unit each)" : "";
  return quoted(text) + ": " + unit.trouble + one + "; " + is_due(due, example);
}

/// Whether the text after a number marks it as a gauge. \param unit without surrounding blanks.
bool is_gauge(std::string_view unit) {
  return unit == "ga" || unit == "gauge";
}

} // namespace

std::string without_unit(std::string_view number, Dim due, std::string_view example) {
  return std::string(number) + " has no unit; " + is_due(due, example);
}

ParsedQuantity parse_quantity(std::string_view text, Dim due, std::string_view example) {
  ParsedQuantity out;
  const std::string plain = plain_ascii(text);
  const LeadingNumber number = leading_number(plain);
  if (!number.ok()) {
    out.trouble = quoted(text) + ": " + number.trouble + "; " + is_due(due, example);
    return out;
  }
  std::string_view rest = number.rest;
  while (rest.ends_with(' ')) rest.remove_suffix(1);
  if (rest.empty()) {
    out.trouble = without_unit(quoted(text), due, example);
    return out;
  }
  if (is_gauge(rest)) {
    out.trouble = quoted(text) + " is a gauge, which only a sheet thickness may be; " + is_due(due, example);
    return out;
  }
  const Unit unit = parse_unit(rest);
  if (!unit.ok())
    out.trouble = unit_trouble(text, rest, unit, due, example);
  else if (unit.exponents != info(due).exponents)
    out.trouble = wrong_kind(text, unit, due, example);
  else if (const double value = unit.si(number.value); std::abs(value) <= info(due).greatest)
    out.value = value;
  else
    out.trouble = out_of_range(text, due);
  return out;
}

std::optional<int> parse_gauge(std::string_view text) {
  const std::string plain = plain_ascii(text);
  const LeadingNumber number = leading_number(plain);
  std::string_view rest = number.rest;
  while (rest.ends_with(' ')) rest.remove_suffix(1);
  if (!number.ok() || !is_gauge(rest)) return std::nullopt;
  // A number that is not whole is a gauge that no table has.
  const bool whole = number.value == std::floor(number.value) && std::abs(number.value) < 1000;
  return whole ? static_cast<int>(number.value) : -1;
}

Unit parse_unit_of(std::string_view text, Dim due) {
  const std::string plain = plain_ascii(text);
  Unit unit = parse_unit(plain);
  const std::string kind(info(due).name), accepted(info(due).units);
  if (!unit.ok())
    unit.trouble = quoted(text) + ": " + unit.trouble + "; expected a unit of " + kind + ": " + accepted;
  else if (unit.exponents != info(due).exponents)
    unit.trouble = quoted(text) + " is not a unit of " + kind + "; expected one such as " + accepted;
  return unit;
}

} // namespace bedbow
