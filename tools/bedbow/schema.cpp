#include "io/schema_json.h"
#include "tools/bedbow/commands.h"
#include "tools/bedbow/exit_code.h"

#include <CLI/CLI.hpp>
#include <nlohmann/json.hpp>

#include <iostream>

namespace bedbow {

void add_schema(CLI::App& app, Run& run) {
  CLI::App* command =
      add_command(app, "schema", "print the JSON Schema of a case file, for editors that complete and check",
                  "bedbow schema > bedbow-case.schema.json");
  command->callback([&run] {
    run = [] {
      std::cout << json_schema(case_schema()).dump(2) << '\n';
      return exit_ok;
    };
  });
}

} // namespace bedbow
