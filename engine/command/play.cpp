#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/report.hpp"
#include "engine/command/verbs.hpp"
#include "engine/sitting/steps.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <ostream>

namespace matula::command {
namespace {

nlohmann::json refusals_json(const std::vector<Refusal>& refusals) {
  auto all = nlohmann::json::array();
  for (const auto& refusal : refusals) {
    all.push_back({{"time_s", refusal.time_s}, {"because", refusal.because}});
  }
  return all;
}

std::vector<SeenThing> see(const sitting::Session& session) {
  return describe(session.scene({appearance::Card::White, optics::Lamp::Daylight}),
                  session.scene({appearance::Card::Printed, optics::Lamp::Daylight}));
}

void print_json(const scenario::Scenario& scenario, const Played& played, const scoring::Report& report,
                const std::vector<attribution::Explanation>& why, std::ostream& out) {
  auto all = to_json(report);
  all["why"] = attribution::to_json(why);
  all["scenario"] = scenario.key;
  all["bench_time_s"] = played.session.time_s();
  all["handed_in"] = played.session.finished();
  all["seen"] = to_json(see(played.session));
  all["refused"] = refusals_json(played.refusals);
  all["worksheet"] = played.session.worksheet();
  out << all.dump(2) << '\n';
}

void print_text(const scenario::Scenario& scenario, const Played& played, const scoring::Report& report,
                const std::vector<attribution::Explanation>& why, std::ostream& out) {
  out << fmt::format("{}\nBench time {:.0f} s\n\n", scenario.title, played.session.time_s());
  print_seen(see(played.session), out);
  for (const auto& refusal : played.refusals) {
    out << fmt::format("Refused at {:g} s: {}\n", refusal.time_s, refusal.because);
  }
  print_report(report, why, out);
}

} // namespace

int run_play(const Play& asked, std::ostream& out, std::ostream& err) {
  const auto ground = load_ground();
  if (!ground) {
    err << scenario::to_text(ground.error()) << '\n';
    return exit_bad_input;
  }
  const auto scenario = scenario::load(asked.scenario, ground->world->catalogue);
  const auto steps = sitting::read_steps(asked.steps);
  if (!scenario || !steps) {
    err << (scenario ? "" : scenario::to_text(scenario.error()) + "\n")
        << (steps ? "" : scenario::to_text(steps.error()) + "\n");
    return exit_bad_input;
  }
  const auto [played, report] = play_and_mark(*ground, *scenario, *steps);
  const auto why = attribution::explain(*ground->world, ground->standards, *scenario, *steps, report);
  if (asked.json) {
    print_json(*scenario, played, report, why, out);
  } else {
    print_text(*scenario, played, report, why, out);
  }
  return exit_good;
}

} // namespace matula::command
