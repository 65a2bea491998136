#include "io/case_reader.h"
#include "io/explain.h"
#include "tools/bedbow/commands.h"
#include "tools/bedbow/exit_code.h"
#include "tools/bedbow/plugins.h"

#include <CLI/CLI.hpp>

#include <iostream>
#include <memory>

namespace bedbow {

namespace {

int check(const std::string& file, const PluginOptions& plugins) {
  std::cout << explain(open_case(file, plugins).value, "", style_for(1));
  return exit_ok;
}

} // namespace

void add_check(CLI::App& app, Run& run) {
  CLI::App* command = add_command(app, "check", "read a case, say what was understood and every problem; solve nothing",
                                  "bedbow check cases/hive-lid/case.toml");
  auto file = std::make_shared<std::string>();
  command->add_option("CASE", *file, "the case file")->required();
  auto plugins = std::make_shared<PluginOptions>();
  add_plugin_options(*command, *plugins);
  command->callback([&run, file, plugins] { run = [file, plugins] { return check(*file, *plugins); }; });
}

} // namespace bedbow
