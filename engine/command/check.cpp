#include "engine/assets/world.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/scenario/scenario.hpp"

#include <ostream>

namespace matula::command {

int run_check(const Check& asked, std::ostream& out, std::ostream& err) {
  const auto world = assets::load(assets::folder());
  if (!world) {
    err << scenario::to_text(world.error()) << '\n';
    return exit_bad_input;
  }
  int code = exit_good;
  for (const auto& file : asked.files) {
    const auto read = scenario::load(file, (*world)->catalogue);
    if (read) {
      out << file << ": good: " << read->title << '\n';
    } else {
      err << scenario::to_text(read.error()) << '\n';
      code = exit_bad_input;
    }
  }
  return code;
}

} // namespace matula::command
