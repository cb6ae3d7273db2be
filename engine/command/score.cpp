#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/report.hpp"
#include "engine/command/verbs.hpp"
#include "engine/examination/halves.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"

#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

namespace fs = std::filesystem;

/// The scenario a sitting names: where it was then, beside the sitting, or in the folder of cases beside the
/// assets.
fs::path find_scenario(const sitting::Header& header, const fs::path& sitting) {
  const fs::path name = header.scenario_key + ".toml";
  for (const auto& place : {fs::path(header.scenario_file), sitting.parent_path() / name,
                            assets::folder().parent_path() / "scenarios" / name}) {
    std::error_code ignored;
    if (fs::is_regular_file(place, ignored)) {
      return place;
    }
  }
  return header.scenario_file;
}

/// Whether the sitting was sat at the bench half of this scenario, in an examination.
bool sat_at_its_bench_half(const sitting::Header& header, const fs::path& scenario) {
  std::string text;
  return strict::read_text(scenario, text) && examination::bench_hash(text) == header.scenario_hash;
}

} // namespace

int run_score(const Score& asked, std::ostream& out, std::ostream& err) {
  const auto ground = load_ground();
  const auto log = sitting::read_log(asked.sitting);
  if (!ground || !log) {
    err << scenario::to_text(!ground ? ground.error() : log.error()) << '\n';
    return exit_bad_input;
  }
  const auto file = find_scenario(log->header, asked.sitting);
  const auto scenario = scenario::load(file, ground->world->catalogue);
  if (!scenario) {
    err << scenario::to_text(scenario.error()) << '\n';
    return exit_bad_input;
  }
  const auto differences = sat_at_its_bench_half(log->header, file)
                               ? scenario::Problems{}
                               : sitting::check_scenario(log->header, *scenario, asked.sitting);
  if (!differences.empty()) {
    err << scenario::to_text(differences) << "\nThe marks below are for the scenario as it is now.\n";
  }
  if (!log->cut_off.empty()) {
    err << asked.sitting << ": the last line was cut short and is left out\n";
  }
  const auto report = scoring::score(*ground->world, ground->standards, *scenario, log->events);
  const auto why = attribution::explain(*ground->world, ground->standards, *scenario, log->events, report);
  if (asked.json) {
    out << attribution::marks_text(report, why, scenario->key, !differences.empty());
  } else {
    out << scenario->title << '\n';
    print_report(report, why, out);
  }
  return exit_good;
}

} // namespace matula::command
