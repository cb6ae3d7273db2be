#include "engine/author/schema.hpp"

#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/verbs.hpp"

#include <ostream>

namespace matula::command {

int run_schema(const Schema&, std::ostream& out, std::ostream& err) {
  const auto ground = load_ground();
  if (!ground) {
    err << scenario::to_text(ground.error()) << '\n';
    return exit_bad_input;
  }
  const auto shelf = author::load_shelf(*ground->world, ground->standards, assets::folder());
  if (!shelf) {
    err << scenario::to_text(shelf.error()) << '\n';
    return exit_bad_input;
  }
  out << author::scenario_schema(**shelf);
  return exit_good;
}

} // namespace matula::command
