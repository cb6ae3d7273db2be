#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/records/rescore.hpp"
#include "engine/records/trouble.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <fmt/ostream.h>
#include <nlohmann/json.hpp>
#include <ostream>

namespace matula::command {
namespace {

using nlohmann::json;

json number_or_null(const std::optional<int>& number) {
  return number ? json(*number) : json(nullptr);
}

json standing_json(const records::SittingRow& row) {
  return {{"mean", row.standing.mean}, {"passed", row.standing.passed}, {"ledgers", row.ledgers},
          {"rubric", row.rubric.hash}, {"program", row.rubric.program}, {"scenario", row.scenario_name}};
}

json to_json(const records::RescoreSum& sum) {
  json changed = json::array();
  for (const auto& one : sum.changed) {
    json changes = json::array();
    for (const auto& change : one.changes) {
      changes.push_back({{"item", change.item},
                         {"earned_before", number_or_null(change.earned_before)},
                         {"earned_now", number_or_null(change.earned_now)},
                         {"possible_before", number_or_null(change.possible_before)},
                         {"possible_now", number_or_null(change.possible_now)}});
    }
    changed.push_back({{"number", one.now.number},
                       {"student", one.now.pseudonym},
                       {"case", one.now.exercise},
                       {"before", standing_json(one.before)},
                       {"now", standing_json(one.now)},
                       {"changes", changes}});
  }
  return {{"sittings", sum.sittings},     {"as_before", sum.as_before}, {"passed_before", sum.passed_before},
          {"passed_now", sum.passed_now}, {"changed", changed},         {"refused", sum.refused.size()}};
}

std::string of(const std::optional<int>& earned, const std::optional<int>& possible) {
  return earned && possible ? fmt::format("{}/{}", *earned, *possible) : std::string("-");
}

const char* passed(const records::SittingRow& row) {
  return row.standing.passed ? "passed" : "not passed";
}

void print(const records::RescoreSum& sum, bool on_trial, std::ostream& out) {
  for (const auto& one : sum.changed) {
    fmt::print(out, "{:>5}  {:<16} {:<24} readings {} -> {}, {} -> {}\n", one.now.number, one.now.pseudonym,
               one.now.exercise, one.before.standing.mean, one.now.standing.mean, passed(one.before),
               passed(one.now));
    for (const auto& change : one.changes) {
      fmt::print(out, "         {}: {} -> {}\n", change.label,
                 of(change.earned_before, change.possible_before),
                 of(change.earned_now, change.possible_now));
    }
  }
  fmt::print(out, "{} passed before, {} pass now\n", sum.passed_before, sum.passed_now);
  fmt::print(out, "{} sittings marked anew: {} as before, {} otherwise; {}\n", sum.sittings, sum.as_before,
             sum.changed.size(), on_trial ? "a trial, nothing was stored" : "both scores of each are kept");
}

} // namespace

int run_class_rescore(const ClassRescore& asked, std::ostream& out, std::ostream& err) {
  records::RescoreWishes wishes{scope_of(asked), "", asked.threads, now_s(), asked.on_trial};
  if (!asked.scenario.empty() && !strict::read_text(asked.scenario, wishes.other_scenario)) {
    throw records::Trouble(asked.scenario + " cannot be read.");
  }
  if (!asked.scenario.empty() && wishes.scope.exercise.empty()) {
    wishes.scope.exercise = std::filesystem::path(asked.scenario).stem().string();
  }
  records::Store store(asked.store);
  auto room = open_marking_room();
  const auto sum = records::rescore(store, *room.marker, wishes, progress_on(err));
  print_refused(sum.refused, err);
  if (asked.json) {
    out << to_json(sum).dump(1) << '\n';
  } else {
    print(sum, asked.on_trial, out);
  }
  return sum.refused.empty() ? exit_good : exit_bad_input;
}

} // namespace matula::command
