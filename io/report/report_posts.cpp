#include "io/report/report_posts.h"

#include "io/report/report_machine.h"
#include "io/report/report_solve.h"
#include "io/units/quantities_out.h"

namespace bedbow {

namespace {

std::string figures(const PostLayout& l, const Case& c) {
  const OutputUnits& u = c.output;
  std::string out = "clamp bow " + in_unit(l.clamp_bow, u.length, 1e-6) + " " + u.length.name;
  if (c.machine.sheet) out += ", spread of the bend angle " + fixed(to_deg(l.angle_spread), 3) + " deg";
  return out;
}

std::string answer(const PostsFound& f, const Case& c) {
  if (!f.smallest) return "No layout with these numbers of posts keeps all limits.";
  const PostLayout& l = f.counts[*f.smallest];
  const std::string count = std::to_string(l.x.size());
  const std::string at = count + (l.x.size() == 1 ? " post at x = " : " posts at x = ") + places_words(l, c.output);
  return at + ": within the limits, and the fewest of those tried; " + figures(l, c) + ".";
}

ReportSection counts_section(const Case& c, const PostsFound& f, const std::string& goal) {
  ReportSection out{"How many posts, and where"};
  out.text = {"For each number, the places with the least " + goal_words(goal) +
              " in the worst step. x runs along the bend line from the left end of the bed. Spread: of the bend angle "
              "along the sheet, which cannot be corrected. Straightness: the distance of the closest pair of parallel "
              "lines that "
              "contain the clamp's edge. Post: the greatest tension of a post. Used: the highest utilisation. "
              "More posts "
              "can be slightly worse, since each adds its own preload."};
  out.tables.push_back({"Best places for each number", counts_table(f, c.output)});
  if (!f.spacings.empty()) out.tables.push_back({"Evenly spaced, by spacing", spacings_table(f, c.output)});
  if (const auto plot = posts_plot(f, c)) {
    out.plots.push_back(*plot);
    out.text.emplace_back(
        "A flat minimum in the plot means that a few millimetres do not matter, a steep one that they "
        "do.");
  }
  return out;
}

} // namespace

Report posts_report(const Case& c, const PostsFound& found, const std::string& goal, const Machine& machine,
                    const Findings& f, const RunStamp& stamp) {
  Report r{c.machine.title + ": posts"};
  r.answer = answer(found, c);
  r.pass = found.smallest.has_value();
  r.units = c.output;
  r.stamp = stamp;
  r.warnings = f.warnings;
  r.assumptions = f.assumptions;
  r.assumptions.insert(r.assumptions.end(), c.assumptions.begin(), c.assumptions.end());
  r.sections.push_back(counts_section(c, found, goal));
  r.before_machine = 1;
  if (f.status != Status::ok) return r;
  Case shown = c;
  shown.machine = machine;
  add_solve_checks(r, shown, f);
  r.checks_heading = "Limits with " + std::to_string(machine.posts.size()) + " posts";
  r.machine_heading = "The machine with " + std::to_string(machine.posts.size()) + " posts";
  add_machine(r, machine, f);
  return r;
}

} // namespace bedbow
