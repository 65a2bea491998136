#include "io/files/errors.h"
#include "io/text/version.h"
#include "solver/linear/process.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/report_error.h"

#include <CLI/CLI.hpp>

#include <csignal>
#include <iostream>

namespace {

constexpr const char* about =
    "Computes how far bed, clamp and apron of a folding brake made of flat bar bow under the\n"
    "sheet, the effect on the bend angle, and whether any part is overloaded.";

constexpr const char* exit_codes =
    "\nExit status: 0 done, or solved and within limits; 1 solved, a limit is exceeded; 2 the case or the command\n"
    "line is wrong; 3 the structure can't be solved; 4 a file could not be read or written.\n"
    "\nExample:\n  bedbow COMMAND --help";

void add_commands(CLI::App& app, bedbow::Run& run) {
  bedbow::add_capacity(app, run);
  bedbow::add_check(app, run);
  bedbow::add_crown(app, run);
  bedbow::add_fingers(app, run);
  bedbow::add_fit(app, run);
  bedbow::add_list(app, run);
  bedbow::add_modes(app, run);
  bedbow::add_posts(app, run);
  bedbow::add_prototype(app, run);
  bedbow::add_rock(app, run);
  bedbow::add_schema(app, run);
  bedbow::add_setup(app, run);
  bedbow::add_solve(app, run);
  bedbow::add_stock(app, run);
  bedbow::add_sweep(app, run);
}

/// Checks that all output was written: a full disk behind standard output is an error like any other.
int arrived(int code) {
  if (!std::cout.flush())
    throw bedbow::FileError("write", "standard output", "not all of it could be written",
                            "free some space or choose another directory");
  return code;
}

int parse_and_run(int argc, char** argv) {
  CLI::App app(about, "bedbow");
  app.footer(exit_codes);
  app.set_version_flag("--version", "bedbow " + bedbow::version());
  app.require_subcommand(1);
  bedbow::Run run;
  add_commands(app, run);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    // Help and version are "errors" of code 0 to the parser; everything else is a wrong command line.
    return arrived(app.exit(e) == 0 ? bedbow::exit_ok : bedbow::exit_wrong_case);
  }
  return arrived(run());
}

} // namespace

int main(int argc, char** argv) {
  std::signal(SIGXFSZ, SIG_IGN); // a limit on file sizes is reported by the write that exceeds it
  bedbow::tune_process();
  try {
    return parse_and_run(argc, argv);
  } catch (...) {
    std::cout.flush();
    return bedbow::report_error(std::current_exception());
  }
}
