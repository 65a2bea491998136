#include "io/answer/answer.h"

#include "io/files/atomic_file.h"
#include "io/results/csv.h"
#include "io/text/json_text.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "io/text/version.h"
#include "io/units/quantities_out.h"
#include "mesh/piece/si.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <iostream>
#include <stdexcept>

namespace bedbow {

namespace {

using Json = nlohmann::ordered_json;

constexpr int line_width = 98;

FileUnit file_unit(ValueOf of) {
  switch (of) {
  case ValueOf::length:
  case ValueOf::fine_length:
  case ValueOf::tiny_length:
    return file_unit(Quantity::length);
  case ValueOf::force:
    return file_unit(Quantity::force);
  case ValueOf::stress:
    return file_unit(Quantity::stress);
  case ValueOf::angle:
  case ValueOf::tiny_angle:
    return file_unit(Quantity::angle);
  case ValueOf::moment:
    return {"_N_mm", 1e3};
  case ValueOf::line_force:
    return {"_N_per_mm", 1e-3};
  default:
    return {"", 1};
  }
}

std::string head_unit(ValueOf of, const OutputUnits& u) {
  switch (of) {
  case ValueOf::length:
  case ValueOf::fine_length:
    return u.length.name;
  case ValueOf::force:
    return u.force.name;
  case ValueOf::stress:
    return u.stress.name;
  case ValueOf::angle:
    return "deg";
  case ValueOf::moment:
    return "N m";
  case ValueOf::line_force:
    return "N/mm";
  case ValueOf::percent:
    return "%";
  default:
    return "";
  }
}

/// Five characters and a sign.
std::string tiny(double v) {
  return fixed(v, std::abs(v) < 9.9995 ? 3 : std::abs(v) < 99.995 ? 2 : 1);
}

std::string shown(double v, ValueOf of, const OutputUnits& u) {
  switch (of) {
  case ValueOf::length:
    return in_unit(v, u.length, 1e-4);
  case ValueOf::fine_length:
    return in_unit(v, u.length, 1e-6);
  case ValueOf::force:
    return in_unit(v, u.force, 1);
  case ValueOf::stress:
    return in_unit(v, u.stress, 1e5);
  case ValueOf::angle:
    return fixed(si::in_degrees(v), 3);
  case ValueOf::tiny_length:
    return tiny(v * 1e6);
  case ValueOf::tiny_angle:
    return tiny(si::in_degrees(v) * 1e3);
  case ValueOf::moment:
    return fixed(v, 2);
  case ValueOf::line_force:
    return fixed(v * 1e-3, 2);
  case ValueOf::percent:
    return fixed(v * 100, 1);
  case ValueOf::ratio:
    return fixed(v, v != 0 && std::abs(v) < 0.1 ? 4 : 3);
  default:
    return fixed(v, 0);
  }
}

std::string shown(const AnswerCell& cell, ValueOf of, const OutputUnits& u) {
  if (const auto* text = std::get_if<std::string>(&cell)) return printable(*text);
  return shown(std::get<double>(cell), of, u);
}

Json file_value(const AnswerCell& cell, ValueOf of) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  const double v = std::get<double>(cell) * file_unit(of).scale;
  return std::isfinite(v) ? Json(twelve_digits(v)) : Json(nullptr);
}

std::string file_key(const std::string& key, ValueOf of) {
  return key + file_unit(of).suffix;
}

std::string table_text(const AnswerTable& t, const OutputUnits& u, const Style& style) {
  std::vector<TextTable::Column> columns;
  for (const AnswerColumn& c : t.columns) {
    const std::string unit = head_unit(c.of, u);
    columns.push_back(
        {unit.empty() ? c.head : c.head + " " + unit, c.of == ValueOf::text ? Align::left : Align::right});
  }
  TextTable out(std::move(columns));
  for (const auto& row : t.rows) {
    std::vector<TextTable::Cell> cells;
    for (std::size_t i = 0; i < row.size(); ++i) cells.emplace_back(shown(row[i], t.columns[i].of, u));
    out.row(std::move(cells));
  }
  return style.bold(t.title) + "\n" + (out.empty() ? "  none\n" : out.render(style));
}

const AnswerTable& table_of(const Answer& a, const std::string& key) {
  if (key.empty()) return a.tables.at(0);
  std::string keys;
  for (const AnswerTable& t : a.tables) {
    if (t.key == key) return t;
    keys += (keys.empty() ? "" : ", ") + t.key;
  }
  throw std::invalid_argument("--table: unknown table \"" + key + "\"; available: " + keys);
}

std::string listed(const std::string& head, const std::vector<std::string>& lines) {
  std::string out;
  for (const std::string& line : lines) out += list_item(printable(line), line_width, "  - ");
  return out.empty() ? out : head + "\n" + out;
}

} // namespace

std::string answer_text(const Answer& a, const OutputUnits& u, const Style& style) {
  std::string out = style.bold(printable(a.title)) + "\n\n";
  for (const AnswerFact& f : a.facts) {
    const std::string unit = head_unit(f.of, u);
    out += f.name + ": " + shown(f.value, f.of, u) + (unit.empty() ? "" : " " + unit) + "\n";
  }
  if (!a.facts.empty()) out += "\n";
  for (const AnswerTable& t : a.tables) out += table_text(t, u, style) + "\n";
  out += listed("What it means", a.findings);
  out += listed("Assumptions", a.assumed);
  out += listed("Caution", a.cautions);
  return out;
}

nlohmann::ordered_json answer_json(const Answer& a, const std::string& made_by, const std::string& case_sha256) {
  Json out{{"command", a.command}, {"title", a.title}, {"version", made_by}, {"case_sha256", case_sha256}};
  if (!a.plugins.empty()) out["plugins"] = a.plugins;
  for (const AnswerFact& f : a.facts) out[file_key(f.key, f.of)] = file_value(f.value, f.of);
  for (const AnswerTable& t : a.tables) {
    Json rows = Json::array();
    for (const auto& row : t.rows) {
      Json item = Json::object();
      for (std::size_t i = 0; i < row.size(); ++i)
        item[file_key(t.columns[i].key, t.columns[i].of)] = file_value(row[i], t.columns[i].of);
      rows.push_back(std::move(item));
    }
    out[t.key] = std::move(rows);
  }
  out["findings"] = a.findings;
  out["assumptions"] = a.assumed;
  out["cautions"] = a.cautions;
  return out;
}

std::string answer_csv(const AnswerTable& t) {
  std::vector<std::string> fields;
  for (const AnswerColumn& c : t.columns) fields.push_back(file_key(c.key, c.of));
  std::string out = csv_row(fields);
  for (const auto& row : t.rows) {
    fields.clear();
    for (std::size_t i = 0; i < row.size(); ++i) {
      const auto* text = std::get_if<std::string>(&row[i]);
      fields.push_back(text ? *text : csv_number(std::get<double>(row[i]) * file_unit(t.columns[i].of).scale));
    }
    out += csv_row(fields);
  }
  return out;
}

void tell_answer(const Answer& a, const AnswerOptions& options, const OutputUnits& units,
                 const std::string& case_sha256) {
  const Json json = answer_json(a, version(), case_sha256);
  if (!options.out.empty()) {
    FileSet files(options.out);
    for (const AnswerTable& t : a.tables) files.add(t.key + ".csv", answer_csv(t));
    for (const Plot& p : a.plots) files.add(p.file + ".svg", plot_svg(p));
    files.add(a.command + ".json", json_text(json));
    files.commit();
  }
  if (options.json)
    std::cout << json_text(json);
  else if (options.csv)
    std::cout << answer_csv(table_of(a, options.table));
  else
    std::cout << answer_text(a, units, style_for(1));
}

} // namespace bedbow
