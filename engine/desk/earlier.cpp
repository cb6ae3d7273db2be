#include "engine/desk/earlier.hpp"

#include "engine/assets/world.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/disk.hpp"

#include <algorithm>
#include <optional>

namespace matula::desk {

namespace {

namespace fs = std::filesystem;

/// Logs of the folder, the latest first.
std::vector<fs::path> logs_in(const fs::path& folder) {
  auto files = strict::files_in(folder, ".jsonl");
  const auto changed = [](const fs::path& file) {
    std::error_code gone;
    return fs::last_write_time(file, gone);
  };
  std::sort(files.begin(), files.end(), [&](const fs::path& a, const fs::path& b) {
    return changed(a) != changed(b) ? changed(a) > changed(b) : a < b;
  });
  return files;
}

bool handed_in(const sitting::Log& log) {
  return !log.events.empty() && std::holds_alternative<sitting::Finish>(log.events.back().what);
}

std::optional<EarlierTube> tube_of(const Ground& ground, const fs::path& scenarios, const fs::path& file,
                                   const std::string& test, const appearance::View& view) {
  const auto log = sitting::read_log(file);
  if (!log || !handed_in(*log)) {
    return std::nullopt;
  }
  const auto scenario =
      scenario::load(scenarios / (log->header.scenario_key + ".toml"), ground.world().catalogue);
  if (!scenario || !scenario->asked.has(test) ||
      !sitting::check_scenario(log->header, *scenario, file.string()).empty()) {
    return std::nullopt;
  }
  const auto& rules = ground.standards().rules;
  sitting::Session marked(ground.world(), *scenario);
  const auto replay = scoring::play_through(ground.world(), *scenario, rules, log->events, marked, {});
  const auto& moment = replay.tests.at(test);
  if (!moment.tube || moment.vessel.empty()) {
    return std::nullopt;
  }
  sitting::Session again(ground.world(), *scenario);
  for (const sitting::Event& event : log->events) {
    if (event.time_s > moment.time_s) {
      break;
    }
    again.take(event);
  }
  again.run_to(moment.time_s);
  return EarlierTube{file.stem().string(), moment.value, rules.find_test(test)->word(moment.tube->grade),
                     moment.tube->intensity, again.look(moment.vessel, view)};
}

} // namespace

std::vector<EarlierTube> earlier_tubes(const Ground& ground, const fs::path& scenarios,
                                       const fs::path& sittings, const fs::path& except,
                                       const std::string& test, const appearance::View& view,
                                       std::size_t most) {
  std::vector<EarlierTube> tubes;
  const auto* rule = ground.standards().rules.find_test(test);
  if (rule == nullptr || rule->scale.on_paper() || rule->result != procedure::Result::Word) {
    return tubes;
  }
  for (const fs::path& file : logs_in(sittings)) {
    if (tubes.size() == most) {
      break;
    }
    std::error_code differs;
    if (fs::equivalent(file, except, differs)) {
      continue;
    }
    if (auto tube = tube_of(ground, scenarios, file, test, view)) {
      tubes.push_back(std::move(*tube));
    }
  }
  std::stable_sort(tubes.begin(), tubes.end(),
                   [](const EarlierTube& a, const EarlierTube& b) { return a.intensity < b.intensity; });
  return tubes;
}

} // namespace matula::desk
