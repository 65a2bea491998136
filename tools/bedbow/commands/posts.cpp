#include "io/case/case_reader.h"
#include "io/files/atomic_file.h"
#include "io/report/report_posts.h"
#include "io/text/text.h"
#include "io/text/version.h"
#include "solver/analysis.h"
#include "solver/study/worker_pool.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/choice_option.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <stdexcept>
#include <tuple>

namespace bedbow {

namespace {

constexpr int most_posts = 40;
constexpr int plotted_spacings = 41;

struct PostArguments {
  std::string file, out, count = "2..8";
  PostGoal goal = PostTask{}.goal;
  std::vector<std::string> between, spacings;
  int threads = 0;
  bool free = false, json = false, report = false;
  PluginOptions plugins;
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
    throw std::invalid_argument("--count: \"" + text +
                                "\" is neither a number of posts up to 40 nor a range such as 2..8");
  return {from, to};
}

/// Where posts may stand: as requested, else along the bars that the first post joins, as far as a hole may stand.
void set_range(const Machine& m, const PostArguments& a, PostTask& task) {
  if (!a.between.empty()) {
    const std::vector<double> ends = lengths_of("between", a.between);
    if (!(ends[0] < ends[1])) throw std::invalid_argument("--between: the first place must be less than the second");
    task.from = ends[0];
    task.to = ends[1];
    return;
  }
  std::tie(task.from, task.to) = room_for_posts(m);
}

std::vector<std::pair<double, PostLayout>> try_spacings(const Machine& m, const Registries& r, const PostTask& task,
                                                        const std::vector<double>& spacings) {
  std::vector<std::pair<double, PostLayout>> out(spacings.size());
  for_each_index(spacings.size(), task.threads, [&](std::uint64_t i) {
    out[i] = {spacings[i], judge_posts(m, r, even_posts(task, spacings[i]))};
  });
  return out;
}

PostsFound find(const Case& c, const Registries& registries, const PostArguments& a) {
  PostTask task;
  task.goal = a.goal;
  task.free = a.free;
  task.threads = a.threads;
  set_range(c.machine, a, task);
  if (task.goal == PostGoal::spread && !c.machine.sheet)
    throw std::invalid_argument("--for spread needs a [sheet] to bend; use bow or straightness");
  const auto [first, last] = counts_of(a.count);
  const std::vector<double> spacings = lengths_of("spacings", a.spacings);
  PostsFound found;
  for (task.count = first; task.count <= last; ++task.count) {
    if (spacings.empty()) {
      found.counts.push_back(place_posts(c.machine, registries, task));
    } else {
      const auto tried = try_spacings(c.machine, registries, task, spacings);
      found.counts.push_back(
          std::ranges::min_element(tried, {}, [&](const auto& t) { return t.second.rank(task.goal); })->second);
      found.spacings.insert(found.spacings.end(), tried.begin(), tried.end());
    }
    if (task.count == 2)
      found.two = try_spacings(c.machine, registries, task, spacings_within(c.machine, task, plotted_spacings));
  }
  const auto passes = std::ranges::find_if(found.counts, &PostLayout::pass);
  if (passes != found.counts.end()) found.smallest = static_cast<std::size_t>(passes - found.counts.begin());
  return found;
}

void print(const PostsFound& f, const Case& c, const PostArguments& a) {
  const Style style = style_for(1);
  const OutputUnits& units = c.output;
  std::cout << style.bold(printable(c.machine.title)) << "\n\nPosts placed for the least "
            << choice_of(post_goals, a.goal).meaning << " in the worst step\n"
            << counts_table(f, units).render(style);
  if (!f.spacings.empty()) std::cout << "\nEvenly spaced, by spacing\n" << spacings_table(f, units).render(style);
  if (f.smallest) {
    std::cout << "\n" << f.counts[*f.smallest].x.size() << " posts are the fewest that keep all limits\n";
  } else {
    std::cout << "\nno layout keeps all limits\n";
    if (!f.counts.empty())
      for (const std::string& line : wrap("last layout: " + printable(layout_words(f.counts.back(), units)), 96))
        std::cout << "  " << line << "\n";
  }
  std::cout << "Caution: a stud that carries a clamp holds stored force; tighten and loosen the posts alternately.\n";
}

/// The layout that is shown: the fewest posts that pass, else that of the last count.
const PostLayout* shown_layout(const PostsFound& f) {
  if (f.smallest) return &f.counts[*f.smallest];
  const auto solved = std::find_if(f.counts.rbegin(), f.counts.rend(), [](const PostLayout& l) { return l.solved; });
  return solved == f.counts.rend() ? nullptr : &*solved;
}

/// Writes plot and report. \return names of the files.
std::vector<std::string> write_files(const PostsFound& f, const OpenCase& open, const PostArguments& a,
                                     const std::filesystem::path& directory) {
  const Case& c = open.value;
  FileSet files(directory);
  std::vector<std::string> names;
  const auto add = [&](const std::string& name, const std::string& text) {
    files.add(name, text);
    names.push_back(name);
  };
  if (const auto plot = posts_plot(f, c)) add("posts.svg", plot_svg(*plot));
  const PostLayout* layout = shown_layout(f);
  if (a.report && layout) {
    const Machine machine = with_posts(c.machine, layout->x);
    const Findings findings = analyse(machine, open.registries);
    add("report.html",
        report_html(posts_report(c, f, a.goal, machine, findings, {version(), c.text_hash, open.plugins.loaded})));
  }
  if (!names.empty()) files.commit();
  return names;
}

int posts(const PostArguments& a) {
  const OpenCase open = open_case(a.file, a.plugins);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  const PostsFound found = find(c, registries, a);
  const auto directory = output_directory(a.out, a.file);
  const auto files = write_files(found, open, a, directory);
  if (a.json) {
    std::cout << posts_json(found);
  } else {
    print(found, c, a);
    if (!files.empty()) std::cout << "Written to " << directory.string() << ":";
    for (const std::string& name : files) std::cout << " " << name;
    if (!files.empty()) std::cout << "\n";
  }
  if (std::ranges::none_of(found.counts, &PostLayout::solved)) {
    std::cerr << "bedbow: no layout can be solved: " << printable(found.counts.front().trouble) << '\n';
    return exit_unsolvable;
  }
  return found.smallest ? exit_ok : exit_limit_exceeded;
}

} // namespace

void add_posts(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "posts", "number of posts, and where to put them",
                                  "bedbow posts cases/hive-lid/case.toml --count 2..4 --between \"40 mm\" \"860 mm\"");
  auto a = std::make_shared<PostArguments>();
  command->add_option("CASE", a->file, "the case file")->required();
  command->add_option("--count", a->count, "number of posts, such as 4, or a range")->capture_default_str();
  add_choice(*command, "--for", a->goal, post_goals, "quantity to minimise");
  command->add_option("--between", a->between, "least and greatest x of a post (default: the bars' length)")
      ->expected(2);
  command->add_flag("--free", a->free, "move each post independently, not in mirrored pairs");
  command->add_option("--spacings", a->spacings, "try these spacings only, with evenly spaced posts");
  command->add_option("--out", a->out, "directory for posts.svg and report.html (default: out/<case name>)");
  command->add_flag("--report", a->report, "also write report.html, to be opened in any browser");
  command->add_option("--threads", a->threads, "number of threads (default: all)")->check(CLI::Range(1, 4096));
  command->add_flag("--json", a->json, "print JSON for scripts");
  add_plugin_options(*command, a->plugins);
  command->callback([&run, a] { run = [a] { return posts(*a); }; });
}

} // namespace bedbow
