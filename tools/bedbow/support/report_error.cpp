#include "tools/bedbow/support/report_error.h"

#include "io/files/errors.h"
#include "io/plugin/plugin.h"
#include "io/text/style.h"
#include "io/text/text.h"
#include "tools/bedbow/support/exit_code.h"

#include <algorithm>
#include <iostream>
#include <new>

namespace bedbow {

namespace {

void say(const std::string& what) {
  std::cerr << style_for(2).bad("error") << ": " << printable(what) << '\n';
}

/// Greatest number of printed problems; a case made by a script can repeat one mistake a thousand times.
constexpr std::size_t most_lines = 100;

void say_problems(const CaseError& error) {
  report_problems(error.problems(), error.file());
  const auto errors = std::ranges::count(error.problems(), Severity::error, &Problem::severity);
  std::cerr << errors << (errors == 1 ? " error" : " errors") << '\n';
}

} // namespace

void report_problems(const std::vector<Problem>& problems, const std::string& file) {
  const Style style = style_for(2);
  for (std::size_t i = 0; i < std::min(problems.size(), most_lines); ++i) {
    const std::string line = to_string(problems[i], file);
    std::cerr << (problems[i].severity == Severity::error ? style.bad(line) : line) << '\n';
  }
  if (problems.size() > most_lines) std::cerr << "... and " << problems.size() - most_lines << " more\n";
}

int report_error(const std::exception_ptr& error) {
  try {
    std::rethrow_exception(error);
  } catch (const CaseError& e) {
    say_problems(e);
    return exit_wrong_case;
  } catch (const FileError& e) {
    say(e.what());
    return exit_file;
  } catch (const PluginError& e) {
    say(e.what());
    return exit_wrong_case;
  } catch (const std::invalid_argument& e) {
    say(e.what());
    return exit_wrong_case;
  } catch (const std::bad_alloc&) {
    say("out of memory: a coarser element_size needs less");
    return exit_unsolvable;
  } catch (const std::exception& e) {
    say(e.what());
    return exit_unsolvable;
  }
}

} // namespace bedbow
