#include "io/schema/schema_brought.h"
#include "io/schema/schema_json.h"
#include "tools/bedbow/commands/commands.h"
#include "tools/bedbow/support/exit_code.h"
#include "tools/bedbow/support/plugins.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <iostream>
#include <memory>

namespace bedbow {

void add_schema(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "schema", "print the JSON Schema of a case file, for editors that complete and check",
                  "bedbow schema > bedbow-case.schema.json");
  auto plugins = std::make_shared<PluginOptions>();
  add_plugin_option(*command, *plugins);
  command->callback([&run, plugins] {
    run = [plugins] {
      OpenCase open;
      load_plugins(*plugins, open);
      std::cout << json_schema(with_brought(case_schema(), open.registries)).dump(2) << '\n';
      return exit_ok;
    };
  });
}

} // namespace bedbow
