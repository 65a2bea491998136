#include "tests/verification/machine/case_entries.h"

#include "mesh/piece/fastener.h"

#include <algorithm>
#include <cstdio>
#include <random>
#include <stdexcept>

namespace bedbow::verification {

namespace {

std::string digits(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.17g", value);
  return text;
}

std::string unit_of(Quantity quantity, LengthUnit unit) {
  switch (quantity) {
  case Quantity::plain:
    return "";
  case Quantity::length:
    return unit == LengthUnit::mm ? "mm" : "in";
  case Quantity::force:
    return "N";
  case Quantity::moment:
    return "N*m";
  case Quantity::stiffness:
    return "N/mm";
  case Quantity::turn_stiffness:
    return "N*m/rad";
  case Quantity::line_force:
    return "N/mm";
  case Quantity::density:
    return "kg/m^3";
  case Quantity::stress:
    return "MPa";
  case Quantity::angle:
    return "deg";
  }
  throw std::logic_error("no such quantity");
}

std::string value_text(const Entry& e, double value, LengthUnit unit) {
  if (e.quantity == Quantity::plain) return digits(value);
  const bool inch = e.quantity == Quantity::length && unit == LengthUnit::inch;
  return "\"" + digits(inch ? value / 25.4 : value) + " " + unit_of(e.quantity, unit) + "\"";
}

std::string entry_text(const Entry& e, LengthUnit unit) {
  std::vector<std::string> values;
  for (const std::string& t : e.text) values.push_back("\"" + t + "\"");
  for (const double v : e.numbers) values.push_back(value_text(e, v, unit));
  std::string out;
  for (const std::string& v : values) out += (out.empty() ? "" : ", ") + v;
  if (values.empty()) return e.key + " = true\n";
  return e.key + " = " + (e.list ? "[" + out + "]" : out) + "\n";
}

bool repeated(const CaseTable& t) {
  return t.heading.starts_with("[[");
}

/// A number that does not depend on the library's distributions: 0 to n - 1.
std::size_t pick(std::mt19937_64& random, std::size_t n) {
  return static_cast<std::size_t>(random() % n);
}

void flip_first(Entry* e, double length) {
  if (e && e->numbers.size() == 3) e->numbers[0] = length - e->numbers[0];
}

void negate(Entry* e, std::initializer_list<std::size_t> which) {
  if (!e) return;
  for (const std::size_t i : which) e->numbers[i] = -e->numbers[i];
}

/// Places along the bend line and what stands at each, left to right again.
void flip_list(Entry& places, Entry* values, double length) {
  for (double& x : places.numbers) x = length - x;
  std::ranges::reverse(places.numbers);
  if (values) std::ranges::reverse(values->numbers);
}

void mirror_span(CaseTable& t, double length) {
  Entry* from = t.find("from");
  Entry* to = t.find("to");
  if (from->numbers.size() == 3) {
    flip_first(from, length);
    flip_first(to, length);
    return;
  }
  const double left = length - to->numbers[0];
  to->numbers[0] = length - from->numbers[0];
  from->numbers[0] = left;
}

void mirror_table(CaseTable& t, double length) {
  if (Entry* x = t.find("x")) {
    if (x->list)
      flip_list(*x, t.find("height"), length);
    else
      x->numbers[0] = length - x->numbers[0];
  }
  if (Entry* centre = t.find("centre")) centre->numbers[0] = length - centre->numbers[0];
  if (Entry* start = t.find("start")) start->numbers[0] = length - start->numbers[0] - t.find("length")->numbers[0];
  if (Entry* starts = t.find("starts")) {
    Entry* widths = t.find("widths");
    for (std::size_t i = 0; i < starts->numbers.size(); ++i) starts->numbers[i] += widths->numbers[i];
    flip_list(*starts, widths, length);
  }
  if (Entry* first = t.find("first"))
    first->numbers[0] = length - first->numbers[0] - t.find("pitch")->numbers[0] * (t.find("count")->numbers[0] - 1);
  flip_first(t.find("at"), length);
  if (t.find("from")) mirror_span(t, length);
  negate(t.find("up"), {0});
  negate(t.find("force"), {0});
  negate(t.find("moment"), {1, 2});
}

double doubling(Quantity quantity) {
  switch (quantity) {
  case Quantity::length:
  case Quantity::stiffness:
  case Quantity::line_force:
    return 2;
  case Quantity::force:
    return 4;
  case Quantity::moment:
  case Quantity::turn_stiffness:
    return 8;
  case Quantity::density:
    return 0.5;
  default:
    return 1;
  }
}

} // namespace

CaseTable& CaseTable::text(const std::string& key, const std::string& value) {
  entries.push_back({key, Quantity::plain, {}, false, {value}});
  return *this;
}

CaseTable& CaseTable::texts(const std::string& key, const std::vector<std::string>& values) {
  entries.push_back({key, Quantity::plain, {}, true, values});
  return *this;
}

CaseTable& CaseTable::number(const std::string& key, Quantity quantity, double value) {
  entries.push_back({key, quantity, {value}, false, {}});
  return *this;
}

CaseTable& CaseTable::numbers(const std::string& key, Quantity quantity, const std::vector<double>& values) {
  entries.push_back({key, quantity, values, true, {}});
  return *this;
}

CaseTable& CaseTable::flag(const std::string& key) {
  entries.push_back({key, Quantity::plain, {}, false, {}});
  return *this;
}

Entry* CaseTable::find(const std::string& key) {
  const auto found = std::ranges::find(entries, key, &Entry::key);
  return found == entries.end() ? nullptr : &*found;
}

std::string case_text(const CaseTables& tables, LengthUnit unit) {
  std::string out;
  for (const CaseTable& t : tables) {
    out += t.heading + "\n";
    for (const Entry& e : t.entries) out += entry_text(e, unit);
  }
  return out;
}

CaseTables mirrored(CaseTables tables, double length) {
  for (CaseTable& t : tables) mirror_table(t, length);
  return tables;
}

CaseTables shuffled(const CaseTables& tables, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  CaseTables once, many, hinges;
  for (const CaseTable& t : tables) (repeated(t) ? t.heading == "[[hinge]]" ? hinges : many : once).push_back(t);
  for (std::size_t i = many.size(); i > 1; --i) std::swap(many[i - 1], many[pick(random, i)]);
  once.insert(once.end(), many.begin(), many.end());
  once.insert(once.end(), hinges.begin(), hinges.end());
  return once;
}

CaseTables joins_reversed(CaseTables tables) {
  for (CaseTable& t : tables)
    if (Entry* joins = t.find("joins")) std::ranges::reverse(joins->text);
  return tables;
}

CaseTables doubled(CaseTables tables) {
  // What the program takes for a cam without stiffness [N/mm] is the same for every size of machine.
  constexpr double rigid_cam = 1e11;
  for (CaseTable& t : tables) {
    if (t.heading == "[[cam]]" && !t.find("stiffness")) t.number("stiffness", Quantity::stiffness, rigid_cam);
    // So is a standard washer, which does not double with its stud.
    if (const Entry* d = t.heading == "[[post]]" ? t.find("diameter") : nullptr; d && !t.find("washer_diameter"))
      t.number("washer_diameter", Quantity::length,
               hardware(thread_of_size("", d->numbers.front() * 1e-3)).washer_diameter * 1e3);
    for (Entry& e : t.entries)
      for (double& v : e.numbers) v *= doubling(e.quantity);
  }
  return tables;
}

} // namespace bedbow::verification
