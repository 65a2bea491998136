#include "io/files/atomic_file.h"
#include "io/report/report_sweep.h"
#include "io/sweep/sweep_report.h"
#include "io/sweep/sweep_runner.h"
#include "io/text/version.h"
#include "solver/analysis.h"
#include "solver/linear/process.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/interrupt.h"
#include "tools/bedbow/support/output_place.h"
#include "tools/bedbow/support/plugins.h"
#include "tools/bedbow/support/progress_line.h"

#include <CLI/CLI.hpp>

#include <iostream>
#include <memory>
#include <stdexcept>

namespace bedbow {

namespace {

constexpr int exit_interrupted = 130; // 128 + SIGINT, as shells have it

struct SweepArguments {
  std::string file, out, csv, shard;
  int threads = 0;
  bool fresh = false, quiet = false, report = false;
  PluginOptions plugins;
};

/// "3/8" is the third of eight parts.
Shard shard_of(const std::string& text) {
  if (text.empty()) return {};
  std::istringstream in(text);
  long long k = 0, n = 0;
  char slash = 0;
  if (!(in >> k >> slash >> n) || slash != '/' || !in.eof() || k < 1 || n < k)
    throw std::invalid_argument("--shard: \"" + text + "\" is not a part K/N with 1 <= K <= N, such as 3/8");
  return {static_cast<std::uint64_t>(k - 1), static_cast<std::uint64_t>(n)};
}

std::filesystem::path directory_of(const SweepArguments& a, const Shard& shard) {
  const auto base = output_directory(a.out, a.file);
  if (!a.out.empty() || shard.count == 1) return base;
  return base / ("shard-" + std::to_string(shard.index + 1) + "-of-" + std::to_string(shard.count));
}

std::vector<std::string> names_of(const SweepSpec& spec) {
  std::vector<std::string> out;
  for (const SweepVary& v : spec.vary) out.push_back(v.keys.front() + (v.keys.size() > 1 ? " ..." : ""));
  return out;
}

void write_report(const std::filesystem::path& directory, const VariantStore& store, const VariantMaker& maker,
                  const Case& c, const Registries& registries) {
  std::optional<ShownVariant> shown;
  if (const auto id = variant_to_show(store)) {
    shown = ShownVariant{*id, maker.understood(*id), {}};
    shown->findings = analyse(shown->value.machine, registries);
  }
  const std::string summary = sweep_summary(store, maker.space(), names_of(c.sweep), Style(false));
  write_file(directory / "report.html",
             report_html(sweep_page(store, c.machine.title, summary, shown ? &*shown : nullptr)));
}

/// Identity that results of two runs must share to be mixed: the program and its plugins.
std::string made_by(const Plugins& plugins) {
  std::string out = version();
  for (const std::string& plugin : plugins.loaded) out += ", " + plugin;
  return out;
}

int sweep(const SweepArguments& a) {
  const Shard shard = shard_of(a.shard);
  const std::atomic<bool>& stop = catch_interrupts();
  const OpenCase open = open_case(a.file, a.plugins);
  const Registries& registries = open.registries;
  const Case& c = open.value;
  const VariantMaker maker(c, registries);
  const auto directory = directory_of(a, shard);
  VariantStore store =
      VariantStore::open(directory, {c.text_hash, made_by(open.plugins), maker.keys(), maker.space().size()},
                         a.fresh ? VariantStore::Start::fresh : VariantStore::Start::resume);
  bool whole = false;
  {
    ProgressLine line;
    SweepRun run{shard, a.threads, &stop, {}};
    if (!a.quiet) run.progress = [&](const SweepProgress& p) { line.show(p); };
    whole = run_sweep(maker, store, run);
  }
  if (!whole) {
    std::cerr << "interrupted: " << store.count() << " of " << store.identity().variants << " variants are kept in "
              << store.file().string() << "; the same command continues from there\n";
    return exit_interrupted;
  }
  if (!a.csv.empty()) write_sweep_csv(store, a.csv);
  write_file(directory / "front.svg", front_svg(store, c.machine.title));
  if (a.report) write_report(directory, store, maker, c, registries);
  if (!a.quiet)
    std::cout << sweep_summary(store, maker.space(), names_of(c.sweep), style_for(1)) << "\nWritten to "
              << directory.string() << ": variants.db front.svg" << (a.report ? " report.html\n" : "\n");
  return exit_ok;
}

struct MergeArguments {
  std::vector<std::string> from;
  std::string out, csv;
  bool report = false;
};

int merge(const MergeArguments& a) {
  catch_interrupts();
  std::vector<VariantStore> parts;
  for (const std::string& place : a.from) parts.push_back(VariantStore::read(place));
  VariantStore store = VariantStore::open(a.out, parts.front().identity(), VariantStore::Start::resume);
  store.merge(parts);
  if (!a.csv.empty()) write_sweep_csv(store, a.csv);
  write_file(std::filesystem::path(a.out) / "front.svg", front_svg(store, "Trade-off"));
  if (a.report)
    write_file(std::filesystem::path(a.out) / "report.html",
               report_html(sweep_page(store, "Joined sweep", "", nullptr)));
  const std::uint64_t there = store.count(), all = store.identity().variants;
  std::cout << there << " of " << all << " variants in " << store.file().string()
            << (there < all ? "; `bedbow sweep` with this --out computes the rest\n" : "\n");
  return exit_ok;
}

void add_merge(CLI::App& sweep, Run& run) {
  CLI::App* command = sweep.add_subcommand("merge", "join the databases of shards");
  command->footer("\nExample:\n  bedbow sweep merge out/part-1 out/part-2 --out out/whole --csv whole.csv");
  auto a = std::make_shared<MergeArguments>();
  command->add_option("FROM", a->from, "databases, or the directories that contain them")->required();
  command->add_option("--out", a->out, "directory of the joined database; its existing content is kept")->required();
  command->add_option("--csv", a->csv, "also write one row per variant");
  command->add_flag("--report", a->report, "also write report.html, without the machine (which needs the case)");
  command->callback([&run, a] { run = [a] { return merge(*a); }; });
}

} // namespace

void add_sweep(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "sweep", "compute all variants of the case's [sweep], overnight if need be",
                                  "bedbow sweep cases/hive-lid-sweep/case.toml --csv variants.csv");
  auto a = std::make_shared<SweepArguments>();
  CLI::Option* file = command->add_option("CASE", a->file, "the case file");
  command->add_option("--out", a->out, "directory of variants.db (default: out/<case name>)");
  command->add_option("--csv", a->csv, "also write one row per variant");
  command->add_flag("--fresh", a->fresh, "start over; an old database is kept under a dated name");
  command->add_option("--shard", a->shard, "compute part K of N only, such as 3/8");
  command->add_option("--threads", a->threads, "number of threads (default: all)")->check(CLI::Range(1, 4096));
  command->add_flag("--report", a->report, "also write report.html, to be opened in any browser");
  command->add_flag("--quiet", a->quiet, "print nothing");
  add_merge(*command, run);
  add_plugin_options(*command, a->plugins);
  command->callback([&run, a, command, file] {
    if (!command->get_subcommands().empty()) return;
    if (file->count() == 0) throw CLI::RequiredError("CASE");
    run = [a] { return sweep(*a); };
  });
}

} // namespace bedbow
