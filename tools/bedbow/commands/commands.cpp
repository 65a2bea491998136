#include "tools/bedbow/commands/commands.h"

#include <CLI/CLI.hpp>

namespace bedbow {

CLI::App* add_command(CLI::App& app, const std::string& name, const std::string& description,
                      const std::string& example) {
  CLI::App* command = app.add_subcommand(name, description);
  std::string footer = "\nExample:\n";
  std::istringstream lines(example);
  for (std::string line; std::getline(lines, line);) footer += "  " + line + "\n";
  footer.pop_back();
  command->footer(footer);
  return command;
}

} // namespace bedbow
