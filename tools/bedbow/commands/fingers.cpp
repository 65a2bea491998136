#include "io/files/atomic_file.h"
#include "io/results/csv.h"
#include "io/results/summary.h"
#include "io/text/table.h"
#include "io/text/text.h"
#include "io/units/output_units.h"
#include "solver/study/finger_set.h"
#include "tools/bedbow/commands/answer_command.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <charconv>
#include <cmath>
#include <iostream>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

struct Options {
  std::string length, step, gap = "0 mm", kerf = "0 mm", out;
  std::vector<std::string> pieces;
  bool fill = false, json = false, csv = false;
};

// Millimetres, without binary rounding errors.
std::string mm_text(double metres) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, std::round(metres * 1e9) / 1e6).ptr;
  return {text, end};
}

template <class Range, class Text> std::string separated(const Range& range, const char* separator, Text text) {
  std::string out;
  for (const auto& item : range) out.append(out.empty() ? "" : separator).append(text(item));
  return out;
}

std::string fingers_of(const FingerSet& set, const FingerUse& use, const char* separator, auto text) {
  return separated(use.fingers, separator, [&](int i) { return text(set.pieces.at(static_cast<std::size_t>(i))); });
}

std::vector<std::string> assumed() {
  return {"m fingers make at most 2^m - 1 widths, each finger used once (counting bound)",
          "fingers are cut to their width exactly; gap and kerf as given"};
}

std::string json_of(const FingerSet& set) {
  std::string out = "{\"pieces_mm\": [" + separated(set.pieces, ", ", mm_text) + "],\n \"widths_not_made_mm\": [" +
                    separated(set.not_made, ", ", mm_text) + "],\n \"filler_mm\": " + mm_text(set.filler) +
                    ", \"total_mm\": " + mm_text(set.total) + ", \"stock_mm\": " + mm_text(set.stock) +
                    ",\n \"widths\": [";
  const char* separator = "\n  ";
  for (const FingerUse& use : set.uses) {
    out += separator + std::string("{\"width_mm\": ") + mm_text(use.width) + ", \"set_mm\": " + mm_text(use.set) +
           ", \"fingers_mm\": [" + fingers_of(set, use, ", ", mm_text) + "]}";
    separator = ",\n  ";
  }
  return out + "\n ],\n \"assumptions\": " + nlohmann::json(assumed()).dump() +
         ",\n \"cautions\": " + nlohmann::json(cautions()).dump() + "}\n";
}

/// One row per box width; fingers with spaces between, empty where the width can't be made.
std::string csv_of(const FingerSet& set) {
  std::string out = csv_row({"width_mm", "set_mm", "fingers_mm"});
  for (const FingerUse& use : set.uses)
    out +=
        csv_row({mm_text(use.width), use.fingers.empty() ? "" : mm_text(use.set), fingers_of(set, use, " ", mm_text)});
  return out;
}

void print_tables(const FingerSet& set, const OutputUnit& unit) {
  const Style style = style_for(1);
  const auto show = [&](double metres) { return in_unit(metres, unit, 1e-5); };
  std::cout << style.bold(std::to_string(set.pieces.size()) + " fingers") << " [" << unit.name
            << "]: " << separated(set.pieces, ", ", show) << '\n'
            << "total " << show(set.total) << ", cut from a bar of " << show(set.stock) << '\n';
  if (set.filler > 0)
    std::cout << "the piece of " << show(set.filler)
              << " is only a filler: the length is not a whole number of steps\n";
  TextTable table({{"box width"}, {"fingers", Align::left}, {"total width"}});
  for (const FingerUse& use : set.uses) {
    const bool made = !use.fingers.empty();
    table.row({show(use.width),
               made ? TextTable::Cell(fingers_of(set, use, " + ", show)) : TextTable::Cell("can't be made", Mark::bad),
               made ? show(use.set) : "-"});
  }
  std::cout << table.render(style);
  if (set.not_made.empty())
    std::cout << "every width can be made\n";
  else
    std::cout << set.not_made.size() << " of " << set.uses.size() << " widths can't be made\n";
  std::cout << "Assumptions\n";
  for (const std::string& line : assumed()) std::cout << list_item(line, 98, "  - ");
  std::cout << "Caution\n";
  for (const std::string& line : cautions()) std::cout << list_item(line, 98, "  - ");
}

int fingers(const Options& options) {
  FingerTask task;
  task.length = quantity_of("length", options.length, Dim::length);
  task.step = quantity_of("step", options.step, Dim::length);
  task.gap = quantity_of("gap", options.gap, Dim::length);
  task.kerf = quantity_of("kerf", options.kerf, Dim::length);
  task.fill = options.fill;
  const std::vector<double> pieces = lengths_of("pieces", options.pieces);
  const FingerSet set = pieces.empty() ? find_fingers(task) : judge_fingers(task, pieces);
  const bool inches = options.step.ends_with("in") || options.step.ends_with('"');
  if (!options.out.empty()) {
    FileSet files(options.out);
    files.add("fingers.json", json_of(set));
    files.add("fingers.csv", csv_of(set));
    files.commit();
  }
  if (options.json)
    std::cout << json_of(set);
  else if (options.csv)
    std::cout << csv_of(set);
  else
    print_tables(set, inches ? OutputUnit{"in", 0.0254} : OutputUnits{}.length);
  return exit_ok;
}

} // namespace

void add_fingers(CLI::App& app, Run& run) {
  const auto options = std::make_shared<Options>();
  CLI::App* command = add_command(app, "fingers", "fewest clamp fingers that make every box width of a step",
                                  "bedbow fingers --length \"300 mm\" --step \"10 mm\" --fill");
  command->add_option("--length", options->length, "length available for the fingers, such as \"300 mm\"")->required();
  command->add_option("--step", options->step, "step of the box widths, such as \"10 mm\" or \"1/2 in\"")->required();
  command->add_flag("--fill", options->fill, "all fingers together must fill the length");
  command->add_option("--gap", options->gap, "gap between neighbouring fingers")->capture_default_str();
  command->add_option("--kerf", options->kerf, "width lost by each cut")->capture_default_str();
  command
      ->add_option("--pieces", options->pieces,
                   "available fingers: report which widths these make instead of choosing new ones")
      ->excludes("--fill");
  auto* json = command->add_flag("--json", options->json, "print JSON for scripts");
  command->add_flag("--csv", options->csv, "print CSV instead, one row per box width")->excludes(json);
  command->add_option("--out", options->out, "also write fingers.json and fingers.csv into this directory");
  command->callback([options, &run] { run = [options] { return fingers(*options); }; });
}

} // namespace bedbow
