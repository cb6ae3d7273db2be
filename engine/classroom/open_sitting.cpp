#include "engine/classroom/open_sitting.hpp"

#include "engine/classroom/recording.hpp"
#include "engine/examination/open_returned.hpp"
#include "engine/records/review.hpp"
#include "engine/records/trouble.hpp"
#include "engine/sitting/log.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::classroom {
namespace {

records::SittingRow row_of(records::Store& store, long long number) {
  const auto rows = store.sittings();
  const auto found =
      std::find_if(rows.begin(), rows.end(), [number](const auto& row) { return row.number == number; });
  if (found == rows.end()) {
    throw records::Trouble(fmt::format("There is no sitting {} in this store.", number));
  }
  return *found;
}

} // namespace

OpenSitting open_sitting(records::Store& store, records::Marker& marker, long long number) {
  OpenSitting open;
  open.row = row_of(store, number);
  const auto original = store.original(number);
  const auto marked = marker.mark(original);
  if (!marked) {
    throw records::Trouble(marked.error());
  }
  const auto& world = marker.world();
  // Both were read a moment ago, by the marker.
  const auto scenario = scenario::parse(original.scenario_text, original.scenario_file, world.catalogue);
  const auto log = sitting::parse_log(original.log_text, original.came_from);
  open.report = marked->report;
  for (const auto& check : records::checks_of(open.row.checks)) {
    if (auto words = examination::words_of(check.state, check.what, check.words); !words.empty()) {
      open.checks.push_back(std::move(words));
    }
  }
  open.other_rules = open.row.rubric.hash != marked->rubric.hash ||
                     open.row.rubric.world != marked->rubric.world ||
                     open.row.scenario_name != marked->scenario_name;
  open.patient =
      fmt::format("{}, {}, {}", scenario->patient.name, scenario->patient.age_sex, scenario->patient.ward);
  open.shelf = scenario->reagents_out;
  open.recording = std::make_shared<const Recording>(
      make_recording(world, marker.standards(), *scenario, log->events, open.report));
  return open;
}

std::vector<attribution::Explanation> explain_sitting(const OpenSitting& sitting,
                                                      const records::Marker& marker) {
  return attribution::explain(marker.world(), marker.standards(), sitting.recording->scenario,
                              sitting.recording->events, sitting.report);
}

} // namespace matula::classroom
