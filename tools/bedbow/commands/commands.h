/// \file
/// The commands of the program, one source file each. A command adds its subcommand with options, help and an example,
/// and sets `run` to its work, to be done once the whole command line has been parsed.
#pragma once

#include <functional>
#include <string>

namespace CLI {
class App;
}

namespace bedbow {

/// Work of the chosen command; returns an ExitCode. Errors leave it as exceptions, which main turns into messages and
/// codes.
using Run = std::function<int()>;

/// Adds a subcommand whose --help ends in a working example. \param example one or more lines, without indent.
/// \return the subcommand, for its options and its callback, which assigns `run`.
CLI::App* add_command(CLI::App& app, const std::string& name, const std::string& description,
                      const std::string& example);

void add_capacity(CLI::App& app, Run& run);  // capacity.cpp
void add_check(CLI::App& app, Run& run);     // check.cpp
void add_crown(CLI::App& app, Run& run);     // crown.cpp
void add_fingers(CLI::App& app, Run& run);   // fingers.cpp
void add_fit(CLI::App& app, Run& run);       // fit.cpp
void add_list(CLI::App& app, Run& run);      // list.cpp
void add_modes(CLI::App& app, Run& run);     // modes.cpp
void add_posts(CLI::App& app, Run& run);     // posts.cpp
void add_prototype(CLI::App& app, Run& run); // prototype.cpp
void add_rock(CLI::App& app, Run& run);      // rock.cpp
void add_schema(CLI::App& app, Run& run);    // schema.cpp
void add_setup(CLI::App& app, Run& run);     // setup.cpp
void add_solve(CLI::App& app, Run& run);     // solve.cpp
void add_stock(CLI::App& app, Run& run);     // stock.cpp
void add_sweep(CLI::App& app, Run& run);     // sweep.cpp

} // namespace bedbow
