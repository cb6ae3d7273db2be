// The explanation of a whole sitting with six deviations from the method: wall time, and how it stands to
// marking the same sitting in the same run.
#include "ratio.hpp"

#include "engine/assets/world.hpp"
#include "engine/attribution/explanation.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/sitting/steps.hpp"

#include <chrono>
#include <stdexcept>
#include <string>

namespace {

using namespace matula;

template <typename T> T need(tl::expected<T, scenario::Problems> read) {
  if (!read) {
    throw std::runtime_error(scenario::to_text(read.error()));
  }
  return std::move(*read);
}

/// The first case: too little urine boiled too briefly with too much acid; the sulfosalicylic acid short,
/// unmixed and read at once; Benedict's with too much urine and half the heat; the float unwiped.
constexpr const char* six = R"({"do":"protect","gloves":true,"goggles":true}
{"do":"mix","vessel":"specimen","manner":"swirl","seconds":10}
{"do":"float","vessel":"water","wiped":true,"spun":true}
{"wait":15}
{"do":"record","item":"sg.zero","value":"1.002"}
{"do":"lift_float"}
{"do":"pour","from":"specimen","to":"jar","volume_ml":30,"gently":true}
{"do":"thermometer","vessel":"jar"}
{"do":"record","item":"sg.temperature","value":"22"}
{"do":"float","vessel":"jar","wiped":false,"spun":true}
{"wait":15}
{"do":"look","vessel":"jar","card":"white","eye_mm":0}
{"do":"record","item":"sg.reading","value":"1.017"}
{"do":"lift_float"}
{"do":"pour","from":"specimen","to":"tube-1","volume_ml":9}
{"do":"flame","on":true}
{"do":"move","vessel":"tube-1","place":"flame","height":0.85,"moving":true}
{"wait":30}
{"do":"move","vessel":"tube-1","place":"rack"}
{"do":"dispense","reagent":"acetic_acid_10","to":"tube-1","volume_ml":0.8}
{"do":"move","vessel":"tube-1","place":"flame","height":0.85,"moving":true}
{"wait":30}
{"do":"move","vessel":"tube-1","place":"rack"}
{"do":"flame","on":false}
{"wait":20}
{"do":"record","item":"heat.grade","value":"1+"}
{"do":"pour","from":"specimen","to":"tube-2","volume_ml":3}
{"do":"dispense","reagent":"ssa_3","to":"tube-2","volume_ml":1.2}
{"wait":40}
{"do":"record","item":"ssa.grade","value":"trace"}
{"do":"dispense","reagent":"benedict","to":"tube-3","volume_ml":5}
{"do":"pour","from":"specimen","to":"tube-3","volume_ml":1.5}
{"do":"mix","vessel":"tube-3","manner":"invert","seconds":5}
{"do":"flame","on":true}
{"do":"move","vessel":"tube-3","place":"flame","height":0.5,"moving":true}
{"wait":60}
{"do":"move","vessel":"tube-3","place":"rack"}
{"do":"flame","on":false}
{"wait":60}
{"do":"record","item":"benedict.grade","value":"negative"}
{"do":"record","item":"sg.corrected","value":"1.016"}
{"do":"finish"}
)";

void explain_six(benchmark::State& state) {
  const auto folder = assets::folder();
  const auto world = need(assets::load(folder));
  const auto standards = need(scoring::load_standards(folder));
  const auto scenario =
      need(scenario::load(folder.parent_path() / "scenarios" / "first_case.toml", world->catalogue));
  const auto log = need(sitting::parse_steps(six, "six"));
  const auto report = scoring::score(*world, standards, scenario, log);
  double wall_s = 0;
  std::size_t deviations = 0;
  std::size_t replays = 0;
  bench_tests::compare(
      state,
      [&] {
        const auto begin = std::chrono::steady_clock::now();
        const auto why = attribution::explain(*world, standards, scenario, log, report);
        wall_s += std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
        deviations = 0;
        replays = 0;
        for (const auto& one : why) {
          deviations += one.shares.size() + one.harmless.size();
          replays += one.replays;
        }
      },
      [&] { benchmark::DoNotOptimize(scoring::score(*world, standards, scenario, log).marks.size()); });
  if (deviations < 6) {
    state.SkipWithError("fewer than six deviations were found");
  }
  state.counters["wall_s"] = wall_s / static_cast<double>(state.iterations());
  state.counters["deviations"] = static_cast<double>(deviations);
  state.counters["replays"] = static_cast<double>(replays);
}

} // namespace

BENCHMARK(explain_six)->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_MAIN();
