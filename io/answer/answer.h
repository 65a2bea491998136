/// \file
/// Answer of a command: tables and text for the workshop, the same as JSON and CSV for programs. Values are SI; the
/// kind of a column defines how they are shown and their unit in files.
#pragma once

#include "io/draw/plot.h"
#include "io/text/style.h"
#include "io/units/output_units.h"

#include <nlohmann/json_fwd.hpp>

#include <filesystem>
#include <string>
#include <variant>
#include <vector>

namespace bedbow {

/// What a column holds; tiny ones are shown in um and mdeg, as their table's title states. Files: mm, N, MPa, deg, N
/// mm, N/mm, or no unit.
enum class ValueOf {
  text,
  count,
  ratio,
  percent,
  length,
  fine_length,
  tiny_length,
  force,
  stress,
  angle,
  tiny_angle,
  moment,
  line_force
};

struct AnswerColumn {
  std::string key;  ///< in files, without unit: "opening" becomes opening_mm
  std::string head; ///< over the printed column, without unit
  ValueOf of = ValueOf::text;
};

/// A text, or a value in SI (NaN: shown as "-", null in files).
using AnswerCell = std::variant<std::string, double>;

struct AnswerTable {
  std::string key;   ///< in JSON, and the name of its CSV file
  std::string title; ///< one line above it
  std::vector<AnswerColumn> columns;
  std::vector<std::vector<AnswerCell>> rows;
};

/// One named value outside the tables.
struct AnswerFact {
  std::string key;  ///< in files, without unit
  std::string name; ///< as printed
  ValueOf of = ValueOf::text;
  AnswerCell value;
};

struct Answer {
  std::string command;              ///< "rock"
  std::string title;                ///< of the case
  std::vector<std::string> plugins; ///< loaded, for the stamp
  std::vector<AnswerFact> facts;
  std::vector<AnswerTable> tables;   ///< the first is the one that --csv prints
  std::vector<Plot> plots{};         ///< each becomes an SVG file named after its `file`, beside the tables
  std::vector<std::string> findings; ///< what it means, one sentence each
  std::vector<std::string> assumed;  ///< what was assumed, with sources
  std::vector<std::string> cautions; ///< hazards
};

/// Output options.
struct AnswerOptions {
  bool json = false, csv = false; ///< print that instead of tables
  std::filesystem::path
      out{};           ///< where given, COMMAND.json, one CSV per table and one SVG per plot are also written there
  std::string table{}; ///< which one --csv prints, by its key; empty: the first
};

/// The answer for a terminal of 100 columns.
std::string answer_text(const Answer& answer, const OutputUnits& units, const Style& style);
/// The answer as JSON, keys with their units.
nlohmann::ordered_json answer_json(const Answer& answer, const std::string& version, const std::string& case_sha256);
/// One table as CSV.
std::string answer_csv(const AnswerTable& table);

/// Prints the answer as asked, and writes its files. Throws FileError, and
/// std::invalid_argument naming the tables where the key is unknown.
void tell_answer(const Answer& answer, const AnswerOptions& options, const OutputUnits& units,
                 const std::string& case_sha256);

} // namespace bedbow
