/// \file
/// A report for people: one page that opens from a file, without network or server. Commands fill a Report with their
/// results; report_html makes the page, with plots, tables, and the machine in 3D where scenes are given.
///
///     Report r{"Posts of the hive-lid folder"};
///     r.answer = "Two posts at 200 and 700 mm bow least: 0.05 mm.";
///     r.sections.push_back({"Where the posts may stand", {}, {{"", table}}, {plot}});
///     write_file("report.html", report_html(r));
#pragma once

#include "io/draw/heat_map.h"
#include "io/draw/plot.h"
#include "io/results/result_json.h"
#include "io/text/table.h"
#include "io/units/output_units.h"
#include "mesh/machine/machine.h"
#include "solver/findings/findings.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace bedbow {

/// A limit of the case and its outcome.
struct ReportCheck {
  enum class Outcome { pass, fail, no_limit };
  std::string what, found, limit, where; ///< as text, with units; where: the step or the bar
  Outcome outcome = Outcome::no_limit;
};

struct ReportTable {
  std::string title;
  TextTable table{{}};
  std::string note{};
};

/// A list of sentences under a title.
struct ReportList {
  std::string title;
  std::vector<std::string> items;
};

struct ReportSection {
  std::string heading;
  std::vector<std::string> text{}; ///< paragraphs
  std::vector<ReportTable> tables{};
  std::vector<Plot> plots{};
  std::vector<HeatMap> maps{};
  std::vector<ReportList> lists{};
  std::string listing{}; ///< text in columns
  bool folded = true;    ///< the listing is collapsed at first
};

/// Values shown for a selected bar or joint: "greatest stress", "92.7 MPa".
using ReportFacts = std::vector<std::pair<std::string, std::string>>;

/// One state of the machine for the viewer.
struct ReportScene {
  enum class Kind { step, mode };
  std::string name; ///< "bend 45 deg", "mode 1: 84 Hz"
  Kind kind = Kind::step;
  double angle = 0;                           ///< of the apron [rad]
  const Fields* fields = nullptr;             ///< not owned; the scale of a mode's displacements is arbitrary
  std::map<std::string, ReportFacts> facts{}; ///< by bar name, and by "post left" for joints
};

/// A round part to draw: stud, cam, pin.
struct ReportFixture {
  std::string name, kind; ///< "post left end", "post"
  Eigen::Vector3d at, axis;
  double diameter = 0, length = 0; ///< [m]
};

struct Report {
  std::string title;
  std::string answer{};               ///< one sentence
  std::optional<bool> pass{};         ///< none: no limits apply
  std::vector<std::string> reasons{}; ///< why it does not pass, gravest first
  std::string checks_heading{"Limits"};
  std::vector<ReportCheck> checks{};
  std::string checks_note{};
  std::string machine_heading{"The machine"};
  std::vector<ReportScene> scenes{};
  std::size_t first_scene = 0; ///< shown initially
  std::vector<ReportFixture> fixtures{};
  std::optional<Sheet> sheet{}; ///< drawn with the machine
  OutputUnits units{};          ///< of the scenes' scales
  std::vector<ReportSection> sections{};
  std::size_t before_machine = 0; ///< number of sections above the machine; the others follow it
  std::vector<std::string> assumptions{}, warnings{};
  RunStamp stamp{};
};

/// The page as one HTML file. \param report its scenes' fields must be alive.
std::string report_html(const Report& report);

/// The data of scenes, fixtures and plots that the page's script reads: JSON that is safe inside a script element.
std::string report_data(const Report& report);

} // namespace bedbow
