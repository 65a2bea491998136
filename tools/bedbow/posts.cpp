#include "io/atomic_file.h"
#include "io/case_reader.h"
#include "io/json_text.h"
#include "io/output_units.h"
#include "io/plot.h"
#include "io/quantities_out.h"
#include "io/table.h"
#include "io/text.h"
#include "solver/linear/process.h"
#include "solver/study/post_layout.h"
#include "solver/study/worker_pool.h"
#include "tools/bedbow/commands.h"
#include "tools/bedbow/exit_code.h"
#include "tools/bedbow/output_place.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr int most_posts = 40;
constexpr int plotted_spacings = 41;

struct PostArguments {
  std::string file, out, count = "2..8", goal = "spread";
  std::vector<std::string> between, spacings;
  int threads = 0;
  bool free = false, json = false;
};

/// "2..8", or one number.
std::pair<int, int> counts_of(const std::string& text) {
  std::istringstream in(text);
  int from = 0, to = 0;
  char a = 0, b = 0;
  in >> from;
  to = from;
  if (in && !in.eof()) in >> a >> b >> to;
  if (!in || !in.eof() || (a && (a != '.' || b != '.')) || from < 1 || to < from || to > most_posts)
    throw std::invalid_argument("--count: \"" + text + "\" is no number of posts up to 40, nor a range as in 2..8");
  return {from, to};
}

/// Where posts may stand: as asked, else all along the bars that the first post joins.
void set_range(const Machine& m, const PostArguments& a, PostTask& task) {
  if (!a.between.empty()) {
    const std::vector<double> ends = lengths_of("between", a.between);
    if (!(ends[0] < ends[1])) throw std::invalid_argument("--between: the first place must be less than the second");
    task.from = ends[0];
    task.to = ends[1];
    return;
  }
  if (m.posts.empty()) throw std::invalid_argument("the case has no [[post]] to copy");
  task.from = -INFINITY;
  task.to = INFINITY;
  for (const Ref& r : m.posts.front().joins) {
    if (r.kind != Ref::Kind::bar) continue;
    task.from = std::max(task.from, m.bar(r).start);
    task.to = std::min(task.to, m.bar(r).end());
  }
}

PostGoal goal_of(const std::string& text) {
  return text == "bow" ? PostGoal::bow : text == "straightness" ? PostGoal::straightness : PostGoal::spread;
}

struct Found {
  std::vector<PostLayout> counts;                      ///< the best of each count
  std::vector<std::pair<double, PostLayout>> spacings; ///< asked for
  std::vector<std::pair<double, PostLayout>> two;      ///< two posts over spacing, for the plot
  const PostLayout* smallest = nullptr;
};

std::vector<std::pair<double, PostLayout>> try_spacings(const Machine& m, const Registries& r, const PostTask& task,
                                                        const std::vector<double>& spacings) {
  std::vector<std::pair<double, PostLayout>> out(spacings.size());
  for_each_index(spacings.size(), task.threads, [&](std::uint64_t i) {
    out[i] = {spacings[i], judge_posts(m, r, even_posts(task, spacings[i]))};
  });
  return out;
}

Found find(const Case& c, const Registries& registries, const PostArguments& a) {
  PostTask task;
  task.goal = goal_of(a.goal);
  task.free = a.free;
  task.threads = a.threads;
  set_range(c.machine, a, task);
  if (task.goal == PostGoal::spread && !c.machine.sheet)
    throw std::invalid_argument("--for spread: nothing is bent without a [sheet]; take bow or straightness");
  const auto [first, last] = counts_of(a.count);
  const std::vector<double> spacings = lengths_of("spacings", a.spacings);
  Found found;
  for (task.count = first; task.count <= last; ++task.count) {
    if (spacings.empty()) {
      found.counts.push_back(place_posts(c.machine, registries, task));
    } else {
      const auto tried = try_spacings(c.machine, registries, task, spacings);
      found.counts.push_back(
          std::ranges::min_element(tried, {}, [&](const auto& t) { return t.second.value(task.goal); })->second);
      found.spacings.insert(found.spacings.end(), tried.begin(), tried.end());
    }
    if (task.count == 2)
      found.two = try_spacings(c.machine, registries, task, spacings_within(c.machine, task, plotted_spacings));
  }
  for (const PostLayout& l : found.counts)
    if (l.pass && !found.smallest) found.smallest = &l;
  return found;
}

nlohmann::ordered_json json_of(const PostLayout& l) {
  std::vector<double> x;
  for (const double at : l.x) x.push_back(twelve_digits(to_mm(at)));
  return {{"count", l.x.size()},
          {"x_mm", x},
          {"angle_spread_deg", to_deg(l.angle_spread)},
          {"clamp_bow_mm", to_mm(l.clamp_bow)},
          {"clamp_straightness_mm", to_mm(l.clamp_straightness)},
          {"post_force_N", l.post_force},
          {"worst_utilisation", l.utilisation},
          {"worst_utilisation_at", l.utilisation_at},
          {"pass", l.pass},
          {"message", l.message}};
}

std::string json_text_of(const Found& f) {
  nlohmann::ordered_json out;
  out["counts"] = nlohmann::ordered_json::array();
  for (const PostLayout& l : f.counts) out["counts"].push_back(json_of(l));
  if (f.smallest)
    out["smallest"] = f.smallest->x.size();
  else
    out["smallest"] = nullptr;
  for (const auto& [spacing, l] : f.spacings) {
    out["spacings"].push_back(json_of(l));
    out["spacings"].back()["spacing_mm"] = twelve_digits(to_mm(spacing));
  }
  return json_text(out);
}

void add_row(TextTable& table, const PostLayout& l, const OutputUnits& units, const std::string& places) {
  if (!l.solved) {
    table.row({std::to_string(l.x.size()), "-", "-", "-", "-", "-", {"not solved", Mark::bad}, places});
    return;
  }
  table.row({std::to_string(l.x.size()), fixed(to_deg(l.angle_spread), 3), in_unit(l.clamp_bow, units.length, 1e-6),
             in_unit(l.clamp_straightness, units.length, 1e-6), in_unit(l.post_force, units.force, 10),
             fixed(l.utilisation, 2), l.pass ? TextTable::Cell("yes", Mark::good) : TextTable::Cell("no", Mark::bad),
             places});
}

TextTable empty_table(const OutputUnits& units, const std::string& last) {
  return TextTable({{"posts"},
                    {"spread deg"},
                    {"bow " + units.length.name},
                    {"straight " + units.length.name},
                    {"post " + units.force.name},
                    {"used"},
                    {"passes", Align::left},
                    {last, Align::left}});
}

void print(const Found& f, const Case& c, const PostArguments& a) {
  const Style style = style_for(1);
  const OutputUnits& units = c.output;
  std::cout << style.bold(printable(c.machine.title)) << "\n\nPosts set for the least "
            << (a.goal == "spread" ? "spread of the bend angle"
                : a.goal == "bow"  ? "clamp bow"
                                   : "clamp straightness")
            << "; worst of all steps\n";
  TextTable table = empty_table(units, "at x " + units.length.name);
  for (const PostLayout& l : f.counts) {
    std::string places;
    for (const double x : l.x) places += (places.empty() ? "" : " ") + in_unit(x, units.length, 1e-3);
    add_row(table, l, units, places);
  }
  std::cout << table.render(style);
  if (!f.spacings.empty()) {
    TextTable tried = empty_table(units, "spacing " + units.length.name);
    for (const auto& [spacing, l] : f.spacings) add_row(tried, l, units, in_unit(spacing, units.length, 1e-4));
    std::cout << "\nEvenly set, by spacing\n" << tried.render(style);
  }
  if (f.smallest) {
    std::cout << "\n" << f.smallest->x.size() << " posts are the fewest that keep all limits\n";
  } else {
    std::cout << "\nnone of these keeps all limits\n";
    if (!f.counts.empty())
      for (const std::string& line : wrap("the last: " + printable(f.counts.back().message), 96))
        std::cout << "  " << line << "\n";
  }
  std::cout << "Caution: a stud that carries a clamp holds stored force; tighten and loosen posts in turns.\n";
}

void write_plot(const Found& f, const Case& c, const std::filesystem::path& directory) {
  if (f.two.empty()) return;
  Plot plot{"Two posts: " + c.machine.title, "spacing [mm]", "clamp [mm]"};
  PlotSeries bow{"bow", {}, {}}, straight{"straightness", {}, {}};
  for (const auto& [spacing, l] : f.two) {
    if (!l.solved) continue;
    for (auto [series, value] : {std::pair{&bow, l.clamp_bow}, std::pair{&straight, l.clamp_straightness}}) {
      series->x.push_back(to_mm(spacing));
      series->y.push_back(to_mm(value));
    }
  }
  if (bow.x.empty()) return;
  plot.series = {std::move(bow), std::move(straight)};
  if (c.machine.limits.bow) plot.limits.push_back({"limit of bow", to_mm(*c.machine.limits.bow)});
  write_file(directory / "posts.svg", plot_svg(plot));
}

int posts(const PostArguments& a) {
  tune_process();
  const Registries registries = builtin_registries();
  const Case c = read_case(a.file, registries);
  const Found found = find(c, registries, a);
  const auto directory = output_directory(a.out, a.file);
  write_plot(found, c, directory);
  if (a.json) {
    std::cout << json_text_of(found);
  } else {
    print(found, c, a);
    if (!found.two.empty()) std::cout << "Written to " << directory.string() << ": posts.svg\n";
  }
  if (std::ranges::none_of(found.counts, &PostLayout::solved)) {
    std::cerr << "bedbow: no number of posts can be solved: " << printable(found.counts.front().message) << '\n';
    return exit_unsolvable;
  }
  return found.smallest ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_posts(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "posts", "how many posts, and where",
                                  "bedbow posts cases/hive-lid/case.toml --count 2..4 --between \"40 mm\" \"860 mm\"");
  auto a = std::make_shared<PostArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--count", a->count, "number of posts: 4, or a range")->capture_default_str();
  command->add_option("--for", a->goal, "what shall be least")
      ->check(CLI::IsMember({"spread", "bow", "straightness"}))
      ->capture_default_str();
  command->add_option("--between", a->between, "least and greatest x of a post; the bars' length when left out")
      ->expected(2);
  command->add_flag("--free", a->free, "move each post by itself, not in mirrored pairs");
  command->add_option("--spacings", a->spacings, "try these spacings only, posts set evenly");
  command->add_option("--out", a->out, "directory for posts.svg; out/<case name> when left out");
  command->add_option("--threads", a->threads, "all of the machine's when left out")->check(CLI::Range(1, 4096));
  command->add_flag("--json", a->json, "print JSON for scripts");
  command->callback([&run, a] { run = [a] { return posts(*a); }; });
}

} // namespace bedbow
