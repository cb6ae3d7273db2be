#include "engine/command/open_bench.hpp"

#include "engine/command/exit_codes.hpp"
#include "engine/desk/ground.hpp"
#include "engine/window/window.hpp"

#include <cstdlib>
#include <ostream>

namespace matula::command {

namespace {

/// $MATULA_SITTINGS, else a folder in the person's home.
std::filesystem::path sittings_folder() {
  if (const char* asked = std::getenv("MATULA_SITTINGS")) {
    return asked;
  }
  const char* home = std::getenv("HOME");
  return std::filesystem::path(home != nullptr ? home : ".") / "matula-sittings";
}

} // namespace

int run_open_bench(const OpenBench& asked, std::ostream& err) {
  const auto ground = desk::Ground::load();
  if (!ground) {
    err << scenario::to_text(ground.error()) << '\n';
    return exit_bad_input;
  }
  window::Options options;
  options.scenarios = ground->assets_folder().parent_path() / "scenarios";
  options.sittings = sittings_folder();
  options.open_scenario = asked.scenario;
  return window::run(*ground, options, err) == 0 ? exit_good : exit_bad_input;
}

} // namespace matula::command
