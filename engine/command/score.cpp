#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/report.hpp"
#include "engine/command/verbs.hpp"
#include "engine/sitting/log.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

namespace fs = std::filesystem;

/// The scenario a sitting names: beside the sitting, in the scenarios folder here, or in the one beside the
/// assets.
fs::path find_scenario(const std::string& key, const fs::path& sitting) {
  const auto name = key + ".toml";
  for (const auto& folder :
       {sitting.parent_path(), fs::path("scenarios"), assets::folder().parent_path() / "scenarios"}) {
    std::error_code ignored;
    if (fs::exists(folder / name, ignored)) {
      return folder / name;
    }
  }
  return fs::path("scenarios") / name;
}

} // namespace

int run_score(const Score& asked, std::ostream& out, std::ostream& err) {
  const auto ground = load_ground();
  const auto log = sitting::read_log(asked.sitting);
  if (!ground || !log) {
    err << scenario::to_text(!ground ? ground.error() : log.error()) << '\n';
    return exit_bad_input;
  }
  const auto scenario =
      scenario::load(find_scenario(log->header.scenario, asked.sitting), ground->world->catalogue);
  if (!scenario) {
    err << scenario::to_text(scenario.error()) << '\n';
    return exit_bad_input;
  }
  const bool changed = scenario->content_hash != log->header.scenario_digest;
  if (changed) {
    err << fmt::format(
        "{}: the scenario {} has been changed since this sitting was made; the marks are for the scenario "
        "as it is now\n",
        asked.sitting, scenario->file);
  }
  if (log->last_line_was_cut) {
    err << asked.sitting << ": the last line was cut short and is left out\n";
  }
  const auto report = scoring::score(*ground->world, ground->standards, *scenario, log->events);
  if (asked.json) {
    auto all = to_json(report);
    all["scenario"] = scenario->key;
    all["scenario_changed"] = changed;
    out << all.dump(2) << '\n';
  } else {
    out << scenario->title << '\n';
    print_report(report, out);
  }
  return exit_good;
}

} // namespace matula::command
