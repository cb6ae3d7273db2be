#include "engine/scoring/by_the_book.hpp"

#include <cmath>

namespace matula::scoring {
namespace {

/// Does actions until one is refused.
class Worker {
public:
  Worker(BookTube& tube, const bench::Setup& setup) : tube_(tube), setup_(setup) {}

  void act(const bench::Action& action) {
    if (!tube_.stopped_because.empty()) {
      return;
    }
    const auto outcome = bench::perform(tube_.state, setup_, action);
    if (!outcome.done) {
      tube_.stopped_because = outcome.refused_because.empty() ? "refused" : outcome.refused_because;
    }
  }

  void step(const RecipeStep& step) {
    switch (step.kind) {
    case StepKind::Pour:
      act(bench::Pour{step.from, step.to, step.volume_ml, step.gently});
      return;
    case StepKind::Dispense:
      act(bench::Dispense{step.reagent, step.to, step.volume_ml, step.gently});
      return;
    case StepKind::Mix:
      act(bench::Mix{step.to, step.manner, step.seconds});
      return;
    case StepKind::Wait:
      act(bench::Wait{step.seconds});
      return;
    case StepKind::Heat:
      into_flame(step);
      act(bench::Wait{step.seconds});
      out_of_flame(step);
      return;
    case StepKind::Boil:
      into_flame(step);
      watch_boil(step);
      out_of_flame(step);
      return;
    case StepKind::Bath:
      into_bath(step);
      return;
    case StepKind::Act:
      for (const auto& action : step.acts) {
        act(action);
      }
      return;
    }
  }

private:
  void into_flame(const RecipeStep& step) {
    act(bench::LightFlame{true});
    act(bench::Move{step.to, bench::Place::Flame, step.height, false, true});
  }

  void out_of_flame(const RecipeStep& step) {
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
    act(bench::LightFlame{false});
  }

  /// The bath is brought to its temperature first, as at a bench where it stands ready.
  void into_bath(const RecipeStep& step) {
    constexpr double ready_k = 0.5;
    constexpr double longest_s = 3600;
    act(bench::SetBath{step.temperature_c});
    for (double waited = 0; waited < longest_s && std::abs(tube_.state.bath_c - step.temperature_c) > ready_k;
         waited += 5) {
      act(bench::Wait{5});
    }
    act(bench::Move{step.to, bench::Place::Bath, 0.85, false, true});
    act(bench::Wait{step.seconds});
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
  }

  [[nodiscard]] double boiled_s(const RecipeStep& step) const {
    const auto vessel = tube_.state.vessels.find(step.to);
    return vessel == tube_.state.vessels.end() ? 0 : vessel->second.trace.boiling_seconds;
  }

  void watch_boil(const RecipeStep& step) {
    const double until = boiled_s(step) + step.seconds;
    for (double spent = 0; spent < step.limit_s && boiled_s(step) < until && tube_.stopped_because.empty();
         spent += 1) {
      act(bench::Wait{1});
    }
  }

  BookTube& tube_;
  const bench::Setup& setup_;
};

} // namespace

BookTube do_by_the_book(const bench::Setup& setup, const Recipe& recipe) {
  BookTube tube{bench::begin(setup), recipe.vessel, ""};
  Worker worker(tube, setup);
  worker.act(bench::Protect{true, true});
  worker.act(bench::Mix{"specimen", bench::Manner::Swirl, 5});
  for (const auto& step : recipe.steps) {
    worker.step(step);
  }
  return tube;
}

} // namespace matula::scoring
