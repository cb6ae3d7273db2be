#include "engine/author/schema.hpp"

#include "engine/command/exit_codes.hpp"
#include "engine/command/study.hpp"
#include "engine/command/verbs.hpp"

#include <ostream>

namespace matula::command {

int run_schema(const Schema&, std::ostream& out, std::ostream& err) {
  const auto study = load_study();
  if (!study) {
    err << scenario::to_text(study.error()) << '\n';
    return exit_bad_input;
  }
  out << author::scenario_schema(*study->shelf);
  return exit_good;
}

} // namespace matula::command
