#include "engine/command/class_run.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/records/trouble.hpp"
#include "engine/records/versions.hpp"

#include <fmt/format.h>
#include <fmt/ostream.h>
#include <nlohmann/json.hpp>
#include <ostream>

namespace matula::command {
namespace {

nlohmann::json to_json(const std::vector<records::Version>& versions) {
  auto all = nlohmann::json::array();
  for (const auto& one : versions) {
    all.push_back({{"number", all.size() + 1},
                   {"case", one.exercise},
                   {"rubric", one.rubric.hash},
                   {"world", one.rubric.world},
                   {"program", one.rubric.program},
                   {"other_scenario", one.scenario_name},
                   {"marked", day_of(one.scored_s)},
                   {"sittings", one.sittings},
                   {"counting", one.counting},
                   {"passed", one.passed}});
  }
  return all;
}

void print(const std::vector<records::Version>& versions, std::ostream& out) {
  constexpr std::size_t letters = 8; // Of a fingerprint, enough to tell a few apart.
  std::size_t number = 0;
  for (const auto& one : versions) {
    fmt::print(
        out,
        "{:>3}  {:<24} {}: {} sittings, {} of them counting, {} pass; rules {}, world {}, program {}, {}\n",
        ++number, one.exercise, day_of(one.scored_s), one.sittings, one.counting, one.passed,
        one.rubric.hash.substr(0, letters), one.rubric.world.substr(0, letters), one.rubric.program,
        one.scenario_name.empty() ? "each sitting's own text of the case"
                                  : "another text of the case, " + one.scenario_name.substr(0, letters));
  }
}

} // namespace

int run_class_versions(const ClassVersions& asked, std::ostream& out, std::ostream& /*err*/) {
  records::Store store(asked.store);
  const auto versions = records::versions_of(store, scope_of(asked));
  if (asked.choose == 0) {
    if (asked.json) {
      out << to_json(versions).dump(1) << '\n';
    } else {
      print(versions, out);
    }
    return exit_good;
  }
  if (static_cast<std::size_t>(asked.choose) > versions.size()) {
    throw records::Trouble(
        fmt::format("There is no version {}; \"matula class versions\" lists them.", asked.choose));
  }
  const auto& chosen = versions[static_cast<std::size_t>(asked.choose) - 1];
  const int changed = records::let_count(store, scope_of(asked), chosen);
  if (asked.json) {
    out << nlohmann::json{{"changed", changed}}.dump(1) << '\n';
  } else {
    fmt::print(out, "{} sittings of {} count otherwise than before\n", changed, chosen.exercise);
  }
  return exit_good;
}

} // namespace matula::command
