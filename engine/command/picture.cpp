#include "engine/render/picture.hpp"

#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/verbs.hpp"
#include "engine/sitting/steps.hpp"

#include <ostream>

namespace matula::command {
namespace {

render::Show show_of(const Played& played, const scenario::Scenario& scenario,
                     const matter::Catalogue& catalogue) {
  render::Show show;
  show.in_hand = played.last_looked_at;
  show.eye_mm = played.last_eye_mm;
  show.seconds = show.boil_seconds = played.session.time_s();
  for (const auto& reagent : catalogue.reagents) {
    show.labels[reagent.key] = reagent.label;
  }
  show.labels["specimen"] = scenario.patient.name;
  return show;
}

} // namespace

int run_picture(const Picture& asked, std::ostream& out, std::ostream& err) {
  const auto folder = assets::folder();
  const auto world = assets::load(folder);
  if (!world) {
    err << scenario::to_text(world.error()) << '\n';
    return exit_bad_input;
  }
  const auto scenario = scenario::load(asked.scenario, (*world)->catalogue);
  const auto steps = sitting::read_steps(asked.steps);
  if (!scenario || !steps) {
    err << scenario::to_text(!scenario ? scenario.error() : steps.error()) << '\n';
    return exit_bad_input;
  }
  const auto played = play_log(**world, *scenario, *steps);
  const auto written = render::write_bench_picture(folder, played.session.scene(played.last_view),
                                                   show_of(played, *scenario, (*world)->catalogue),
                                                   asked.output, asked.width, asked.height);
  if (!written) {
    err << written.error() << '\n';
    return exit_bad_input;
  }
  out << asked.output << '\n';
  return exit_good;
}

} // namespace matula::command
