#include "tools/bedbow/report_error.h"

#include "io/errors.h"
#include "io/style.h"
#include "io/text.h"
#include "tools/bedbow/exit_code.h"

#include <iostream>
#include <new>

namespace bedbow {

namespace {

void say(const std::string& what) {
  std::cerr << style_for(2).bad("error") << ": " << printable(what) << '\n';
}

void say_problems(const CaseError& error) {
  const Style style = style_for(2);
  int errors = 0;
  for (const Problem& p : error.problems()) {
    const bool wrong = p.severity == Severity::error;
    errors += wrong;
    const std::string line = to_string(p, error.file());
    std::cerr << (wrong ? style.bad(line) : line) << '\n';
  }
  std::cerr << errors << (errors == 1 ? " error" : " errors") << '\n';
}

} // namespace

int report_error(const std::exception_ptr& error) {
  try {
    std::rethrow_exception(error);
  } catch (const CaseError& e) {
    say_problems(e);
    return exit_wrong_case;
  } catch (const FileError& e) {
    say(e.what());
    return exit_file;
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
